/** Why a load is fed or not, and why a relay stands where it stands: what follows the colon of a sentence. */
import { type StatementOf, say } from '../../statement.ts';
import { time } from '../circuit.ts';
import { type Path, type Places, path, placesOpen } from './places.ts';

const volts = (value: number): string => `${Number(Math.abs(value).toFixed(2))} V`;

const unfed = {
  burntThrough: 'it is burnt through',
  coilBurntThrough: 'its coil is burnt through, so it does nothing even with its voltage',
  coilHasOnly: ({ has, rated, path: way }: { has: number; rated: number; path: Path }): string =>
    `its coil has only ${volts(has)} of ${rated} V: ${path(way)}`,
  noPath: 'no closed path leads from one pole of a supply through it to the other',
  stopped: ({ open }: { open: Places }): string => placesOpen(open),
};
export type UnfedSaid = StatementOf<typeof unfed>;

export const reasons = {
  ...unfed,
  fed: ({ path: way }: { path: Path }): string => path(way),
  fedFor: ({ path: way, seconds }: { path: Path; seconds: number }): string =>
    `${path(way)}, energised for its ${time(seconds)}`,
  heldByHand: 'it is held in by hand, whatever its coil has',
  stuck: 'it is stuck at rest',
  latched: 'it is a latching relay and stays where its last pulse put it',
  stillReleasing: ({ why, seconds }: { why: UnfedSaid; seconds: number }): string =>
    `its coil is off (${say(unfed, why)}), but its ${time(seconds)} are not over`,
  stillHeld: ({ has }: { has: number }): string =>
    `its coil still has ${volts(has)}, which is enough to hold it`,
  stillOperating: ({ path: way, seconds }: { path: Path; seconds: number }): string =>
    `its coil is energised (${path(way)}), but its ${time(seconds)} are not over`,
  resetToo: ({ path: way }: { path: Path }): string => `its reset coil is fed as well: ${path(way)}`,
  reset: ({ path: way }: { path: Path }): string => `its reset coil is fed: ${path(way)}`,
  notSet: ({ why }: { why: UnfedSaid }): string => `nothing sets it now: ${say(unfed, why)}`,
};
export type ReasonSaid = StatementOf<typeof reasons>;
