/** What hangs together: over whole numbers from 0, and over anything else. */
export { JoinedSets } from './joined-sets.ts';
export { Joining } from './joining.ts';
