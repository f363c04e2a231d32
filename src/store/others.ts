/**
 * Lets whatever else waits in this program have its turn. SQLite works on the thread that asks: without this, others would wait for
 * all that one transaction has to do. What waits for the store itself waits on.
 */
export const others = (): Promise<void> => new Promise((go) => setImmediate(go));
