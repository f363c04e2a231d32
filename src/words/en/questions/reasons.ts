/** Why a load is fed or not, and why a relay stands where it stands: what follows the colon of a sentence. */
import { type StatementOf, say } from '../../statement.ts';
import { time } from '../circuit.ts';
import { type Feed, feed } from './feeds.ts';
import { openOneByOne, type Places } from './places.ts';

const volts = (value: number): string => `${Number(Math.abs(value).toFixed(2))} V`;

interface Fed {
  readonly feed: Feed;
}

/** Seconds for which a timer has been timing, and for which it times. */
interface Timing {
  readonly over: number;
  readonly of: number;
}
const timing = ({ over, of }: Timing): string =>
  over <= 0 ? `its ${time(of)} are only beginning` : `only ${time(over)} of its ${time(of)} are over`;

const unfed = {
  burntThrough: 'it is open inside',
  coilBurntThrough: 'its coil is open inside, so it does nothing even with its voltage',
  coilHasOnly: ({ has, rated, feed: way }: Fed & { has: number; rated: number }): string =>
    `its coil has only ${volts(has)} of ${rated} V, ${feed(way)}`,
  noPath: 'no closed path leads from one pole of a supply through it to the other',
  /** `besides` is open further on: what is open first isn't all that would have to close. */
  stopped: ({ open, besides }: { open: Places; besides?: Places }): string => openOneByOne(open, besides),
};
export type UnfedSaid = StatementOf<typeof unfed>;

export const reasons = {
  ...unfed,
  fed: ({ feed: way }: Fed): string => `it is fed ${feed(way)}`,
  coilFed: ({ feed: way }: Fed): string => `its coil is fed ${feed(way)}`,
  coilFedFor: ({ feed: way, seconds }: Fed & { seconds: number }): string =>
    `its coil is fed ${feed(way)}, and its ${time(seconds)} are over`,
  heldByHand: 'it is held in by hand, whatever its coil has',
  stuck: 'it is stuck at rest',
  latched: 'it is a latching relay and stays where its last pulse put it',
  stillReleasing: ({ why, ...times }: Timing & { why: UnfedSaid }): string =>
    `its coil is off (${say(unfed, why)}), but ${timing(times)}`,
  controlFed: ({ feed: way }: Fed): string => `its control input has its signal, ${feed(way)}`,
  controlStillReleasing: ({ why, ...times }: Timing & { why: UnfedSaid }): string =>
    `the signal at its control input is gone (${say(unfed, why)}), but ${timing(times)}`,
  controlGone: ({ why }: { why: UnfedSaid }): string =>
    `there is no signal at its control input (${say(unfed, why)})`,
  /** Of what releases late. */
  timeOver: ({ why, seconds }: { why: UnfedSaid; seconds: number }): string =>
    `its coil is off (${say(unfed, why)}), and its ${time(seconds)} are over`,
  controlTimeOver: ({ why, seconds }: { why: UnfedSaid; seconds: number }): string =>
    `the signal at its control input is gone (${say(unfed, why)}), and its ${time(seconds)} are over`,
  unsupplied: ({ why }: { why: UnfedSaid }): string =>
    `it has no supply at A1-A2 (${say(unfed, why)}), so it releases at once`,
  stillHeld: ({ has }: { has: number }): string =>
    `its coil still has ${volts(has)}, which is enough to hold it`,
  stillOperating: ({ feed: way, ...times }: Fed & Timing): string =>
    `its coil is fed ${feed(way)}, but ${timing(times)}`,
  resetToo: ({ feed: way }: Fed): string => `its reset coil is fed as well, ${feed(way)}`,
  reset: ({ feed: way }: Fed): string => `its reset coil is fed ${feed(way)}`,
  notSet: ({ why }: { why: UnfedSaid }): string => `nothing sets it now (${say(unfed, why)})`,
};
export type ReasonSaid = StatementOf<typeof reasons>;
