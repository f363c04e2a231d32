/**
 * What hangs together: over whole numbers from 0, over anything else, and where one leads to another. And what follows from a thing
 * is worked out once.
 */
export { JoinedSets } from './joined-sets.ts';
export { Joining } from './joining.ts';
export { once } from './once.ts';
export { type Rows, rowOf, rowsOf, turned } from './rows.ts';
export { strongComponents } from './strong-components.ts';
