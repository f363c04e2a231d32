import { soon } from '../../turns.ts';

/** Milliseconds for which a report waits for papers that have still to be marked. */
const MARKING = 1500;

/** Until when a report that is asked for now waits. */
export const reportBy = (): number => soon(MARKING);
