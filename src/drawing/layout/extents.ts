/** How wide each column of a row is, and so where its line stands. */
import { isPolyphase, isPower } from '../parts/index.ts';
import type { PartLabels } from './labels.ts';
import type { Profile } from './profile.ts';
import {
  type Lane,
  laneKey,
  type PlacedPart,
  type Section,
  spreadsOver,
  type Trunk,
} from './section-types.ts';
import { leftEnd, rightEnd } from './trunk-ends.ts';

export interface Columns {
  /** The line of each column. */
  readonly x: readonly number[];
  /** Where what belongs to it begins and ends. */
  readonly left: readonly number[];
  readonly right: readonly number[];
  /** Whether it belongs beside the column before it: as the next pole of a power device, or as another contact of one hand. */
  readonly tied: Uint8Array;
  readonly width: number;
  readonly laneX: (lane: Lane) => number;
  /** By column and place in the section's list of risers. */
  readonly riserX: readonly (readonly number[])[];
}

/** Values of `tied`. */
export const TIED = 2;
export const LOOSELY = 1;

export type LabelsFor = (place: PlacedPart) => PartLabels;

interface Reach {
  left: number;
  right: number;
}

/** Terminal numbers stand right of their line; a number too wide for the space between two legs left of it. */
export function numberSide(
  { part }: PlacedPart,
  spot: number,
  { numbers }: PartLabels,
  profile: Profile,
): 'left' | 'right' {
  const dx = part.spots[spot]?.dx ?? 0;
  if (part.form !== 'changeover' || dx >= 0) return 'right';
  return (numbers[spot] ?? 0) + profile.numberGap + 1 > 2 * profile.leg ? 'left' : 'right';
}

/** From a part's line to the right end of what is written beside it. */
export function labelAt(place: PlacedPart, labels: PartLabels, profile: Profile): number {
  let furthest = labels.body.left;
  place.part.spots.forEach(({ dx }, spot) => {
    if (numberSide(place, spot, labels, profile) === 'right') return;
    furthest = Math.max(furthest, profile.numberGap + (labels.numbers[spot] ?? 0) - dx * profile.leg);
  });
  return furthest + profile.labelGap;
}

function reachOf(place: PlacedPart, labels: PartLabels, profile: Profile): Reach {
  const { part } = place;
  const { beside, band, body, numbers } = labels;
  const middle = isPolyphase(part.form) ? profile.phase : 0;
  const spread = spreadsOver(place);
  let left = body.left - middle;
  if (beside.width > 0) left = labelAt(place, labels, profile) + beside.width - middle;
  let right = spread ? 0 : body.right + middle;
  part.spots.forEach((spot, index) => {
    const reach = profile.numberGap + (numbers[index] ?? 0);
    const dx = isPolyphase(part.form) ? (spread ? 0 : spot.dx * profile.phase) : spot.dx * profile.leg;
    if (numberSide(place, index, labels, profile) === 'left') left = Math.max(left, reach - dx);
    else right = Math.max(right, reach + dx);
  });
  // Lists of neighbouring coils stand well apart, lest they be read as one.
  const apart = band.lines.length > 0 ? profile.gap : 0;
  return { left, right: Math.max(right, band.width + apart - left) };
}

/** The line beyond which the mark of a trunk's end is written. */
function endLane({ lead, leftmost, rightmost }: Trunk, side: 'before' | 'after', own: Lane): Lane {
  if (side === 'after') return rightmost ?? own;
  const lane = leftmost ?? own;
  return lead && laneKey(lead) < laneKey(lane) ? lead : lane;
}

export function findColumns(section: Section, labels: LabelsFor, profile: Profile): Columns {
  const count = section.columns.length;
  const reach = Array.from({ length: count }, (): Reach => ({ left: 0, right: 0 }));
  const widen = (column: number, left: number, right: number): void => {
    const at = reach[column];
    if (!at) return;
    at.left = Math.max(at.left, left);
    at.right = Math.max(at.right, right);
  };
  const offset = ({ shift, phase }: Lane): number => shift * profile.leg + phase * profile.phase;
  const tied = new Uint8Array(count);
  for (const place of section.standing) {
    const written = labels(place);
    const { left, right } = reachOf(place, written, profile);
    const shift = place.shift * profile.leg;
    widen(place.column, left - shift, right + shift);
    if (place.linked) tied[place.column] = isPower(place.part.form) ? TIED : LOOSELY;
    if (!spreadsOver(place)) continue;
    widen(place.column + 2, 0, written.body.right - profile.phase);
    place.part.spots.forEach(({ dx }, spot) => {
      widen(place.column + dx, 0, profile.numberGap + (written.numbers[spot] ?? 0));
    });
    tied[place.column + 1] = TIED;
    tied[place.column + 2] = TIED;
  }
  const extra = section.risers.map((list) => list.map(() => ({ before: 0, after: 0 })));
  for (const trunk of section.trunks) {
    const ends = [
      [trunk.before, leftEnd(trunk), 'before'],
      [trunk.after, rightEnd(trunk), 'after'],
    ] as const;
    for (const [text, cluster, side] of ends) {
      if (!text || !cluster) continue;
      const need = profile.stub + profile.measure(text, trunk.supply ? 'rail' : 'mark') + profile.markGap;
      const { riser } = cluster;
      const lane = endLane(trunk, side, cluster.lane);
      const led = side === 'before' && trunk.lead && trunk.lead.column <= cluster.lane.column;
      if (riser && !led) {
        const slot = extra[riser.column]?.[section.risers[riser.column]?.indexOf(riser) ?? 0];
        if (slot) slot[side] = need;
      } else if (side === 'before') widen(lane.column, need - offset(lane), 0);
      else widen(lane.column, 0, need + offset(lane));
    }
  }
  const least = Array.from(tied, (way) => (way ? profile.phase : 0));
  const found = line(reach, extra, tied, least, offset, profile);
  const even = line(reach, extra, tied, evenly(found, least, profile.phase), offset, profile);
  return even.width > profile.width ? found : even;
}

/** Something other than the next phase stands between poles further apart than so many pitches. */
const PHASES_APART = 3;

/**
 * By column: how far it stands from the one before it at least. Phases stand at one pitch: where what is written between two of
 * them needs more, all of the group take it.
 */
function evenly({ x, tied }: Columns, least: readonly number[], phase: number): number[] {
  const even = [...least];
  for (let first = 0; first < x.length; first++) {
    if (tied[first] !== TIED) continue;
    let last = first;
    while (tied[last + 1] === TIED) last += 1;
    let widest = 0;
    for (let at = first; at <= last; at++)
      widest = Math.max(widest, (x[at] as number) - (x[at - 1] as number));
    if (widest < PHASES_APART * phase) even.fill(widest, first, last + 1);
    first = last;
  }
  return even;
}

function line(
  reach: readonly Reach[],
  extra: readonly (readonly { before: number; after: number }[])[],
  tied: Uint8Array,
  least: readonly number[],
  offset: (lane: Lane) => number,
  profile: Profile,
): Columns {
  const x: number[] = [];
  const left: number[] = [];
  const right: number[] = [];
  const riserX: number[][] = [];
  let edge = 0;
  reach.forEach((at, column) => {
    const before = x[column - 1];
    const start = before === undefined ? 0 : edge + profile.gap;
    const own = Math.max(start + at.left, (before ?? 0) + (least[column] as number));
    left.push(own - at.left);
    x.push(own);
    edge = own + at.right;
    riserX.push(
      (extra[column] ?? []).map((slot) => {
        edge += slot.before + profile.riser;
        const at = edge;
        edge += slot.after;
        return at;
      }),
    );
    right.push(edge);
  });
  return {
    x,
    left,
    right,
    tied,
    width: edge,
    riserX,
    laneX: (lane) => (x[lane.column] as number) + offset(lane),
  };
}
