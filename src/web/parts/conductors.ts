/** Where the conductors that somebody lays run on a drawing's sheets. */
import type { Sheet, Spot } from '../engine/messages.ts';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Both ends are on this sheet: a line from one to the other. */
export interface Joined {
  readonly from: Point;
  readonly to: Point;
}

/** One of its ends, where the other one is not on this sheet. */
export interface GoesOn extends Point {
  /** Its terminal. */
  readonly spot: Spot;
  /** The conductor's number, which the other end bears as well, and the place of that one; its name where it isn't drawn. */
  readonly sign: string;
  /** It leaves its symbol upwards, not downwards. */
  readonly up: boolean;
}

export interface LaidOn {
  readonly joined: readonly Joined[];
  readonly ends: readonly GoesOn[];
}

type Conductor = readonly [from: string, to: string];

/** Where a terminal is on a sheet. */
function endsOn({ spots, width, height }: Sheet, terminal: string): Omit<GoesOn, 'sign'>[] {
  const found: Omit<GoesOn, 'sign'>[] = [];
  let symbol: Spot | undefined;
  for (const spot of spots) {
    // A symbol stands before its terminals.
    if (spot.kind !== 'terminal') symbol = spot;
    else if (spot.item === terminal) {
      const [x, y] = [spot.x + spot.width / 2, spot.y + spot.height / 2];
      found.push({
        spot,
        x: x * width,
        y: y * height,
        up: symbol === undefined || y < symbol.y + symbol.height / 2,
      });
    }
  }
  return found;
}

/** The places of two terminals that are nearest to each other. */
function nearest(sheet: Sheet, [from, to]: Conductor): Joined | undefined {
  const pairs = endsOn(sheet, from).flatMap((one) => endsOn(sheet, to).map((other) => [one, other] as const));
  const length = ([one, other]: (typeof pairs)[number]): number =>
    Math.hypot(one.x - other.x, one.y - other.y);
  const [best] = pairs.toSorted((one, other) => length(one) - length(other));
  return best && { from: best[0], to: best[1] };
}

/**
 * What of each conductor is drawn on each sheet: a line where both ends are on one; else each end where it is, with its
 * number and the place where it goes on, as the drawing itself has it of such conductors.
 */
export function laidOn(sheets: readonly Sheet[], conductors: readonly Conductor[]): readonly LaidOn[] {
  const laid = sheets.map(() => ({ joined: [] as Joined[], ends: [] as GoesOn[] }));
  conductors.forEach((conductor, number) => {
    const lines = sheets.map((sheet) => nearest(sheet, conductor));
    if (lines.some((line) => line !== undefined)) {
      lines.forEach((line, sheet) => {
        if (line) laid[sheet]!.joined.push(line);
      });
      return;
    }
    const places = conductor.map((terminal) =>
      sheets
        .map((sheet, at) => ({ at, ends: endsOn(sheet, terminal) }))
        .filter(({ ends }) => ends.length > 0),
    );
    places.forEach((here, index) => {
      const other = places[1 - index]![0]?.ends[0];
      const where = other ? (other.spot.place ?? '') : conductor[1 - index]!;
      for (const { at, ends } of here)
        laid[at]!.ends.push(...ends.map((end) => ({ ...end, sign: `${number + 1} ${where}`.trim() })));
    });
  });
  return laid;
}
