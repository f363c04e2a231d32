/** What waits on this device for the server: it goes in the order in which it was given, each once, however often it is tried. */

/** A place in line, and what stands there. */
export interface Waiting<T> {
  readonly key: number;
  readonly value: T;
}

interface Store<T> {
  getAllKeys(query: undefined, count?: number): Promise<number[]>;
  getAll(query: undefined, count?: number): Promise<T[]>;
}

/** The first in line, or all of it. */
export async function inOrder<T>(store: Store<T>, most?: number): Promise<Waiting<T>[]> {
  const [keys, values] = await Promise.all([
    store.getAllKeys(undefined, most),
    store.getAll(undefined, most),
  ]);
  return values.map((value, at) => ({ key: keys[at]!, value }));
}

/** Takes them out of the line. */
export const leave = (
  store: { delete(key: number): Promise<void> },
  sent: readonly { readonly key: number }[],
): Promise<unknown> => Promise.all(sent.map(({ key }) => store.delete(key)));

/** How sending some of the line went; `refused`: one of them is at fault, or all together are too much. */
export type Sent<Why> =
  | { readonly kind: 'taken' }
  | { readonly kind: 'refused'; giveUp(): Promise<unknown> }
  | { readonly kind: 'stopped'; readonly why: Why };

interface Line<T, Why> {
  /** At most so many of the first. */
  first(most: number): Promise<readonly T[]>;
  /** Sends them. Of those that are taken it sees to it that they leave the line. */
  send(batch: readonly T[]): Promise<Sent<Why>>;
}

/**
 * Sends until nothing waits, or it can't be sent now. What is refused together is sent by halves, until it shows which one it
 * is; that one is given up, and holds up none of the others.
 */
export async function sendLine<T, Why>(line: Line<T, Why>, batch: number): Promise<'done' | Why> {
  let most = batch;
  for (;;) {
    const some = await line.first(most);
    if (some.length === 0) return 'done';
    const sent = await line.send(some);
    if (sent.kind === 'stopped') return sent.why;
    if (sent.kind === 'refused' && some.length > 1) {
      most = Math.ceil(some.length / 2);
      continue;
    }
    if (sent.kind === 'refused') await sent.giveUp();
    most = batch;
  }
}
