/** What is kept, on SQLite. */
export { openSqliteStore } from './sqlite.ts';
export type { Store } from './types.ts';
