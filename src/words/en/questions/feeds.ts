/** Ways from pole to pole: the contacts that they take, and why those are closed. */
import { type StatementOf, say } from '../../statement.ts';
import { speech } from '../speech.ts';
import { type Hop, hop, positions } from './places.ts';

/** Why a contact is closed. */
const closed = {
  ...positions,
  welded: 'welded, so it stays closed',
  ownContact: 'its own contact',
};
export type ClosedSaid = StatementOf<typeof closed>;

/** Contacts that follow one another, or one load, and why they are closed where something moves them. */
export interface FeedPart {
  readonly hops: readonly Hop[];
  readonly closed?: ClosedSaid;
}

/** From a pole to what is fed, and back to another pole. */
export interface Feed {
  readonly from: string;
  readonly through: readonly FeedPart[];
  readonly back: readonly FeedPart[];
  readonly to: string;
}

function because(why: ClosedSaid): string {
  const reason = say(closed, why);
  return why.says === 'welded' || why.says === 'ownContact' ? reason : `closed: ${reason}`;
}

const part = ({ hops, closed: why }: FeedPart): string =>
  `${hops.map(hop).join(' and ')}${why ? ` (${because(why)})` : ''}`;

export const parts = (all: readonly FeedPart[]): string => speech.and(all.map(part));

/** `from A:L+ through -F1:1-2 and -K1:11-14 (closed: -K1 has operated), and back to A:L-`. */
export function feed({ from, through, back, to }: Feed): string {
  const there = through.length > 0 ? `from ${from} through ${parts(through)}` : `straight from ${from}`;
  return back.length > 0
    ? `${there}, and back through ${parts(back)} to ${to}`
    : `${there}, and back to ${to}`;
}
