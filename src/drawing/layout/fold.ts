/**
 * Where a sheet's columns are broken into rows no wider than the medium: where the fewest conductors are cut, and else so
 * that the rows come out equally wide.
 */

export interface Foldable {
  readonly left: readonly number[];
  readonly right: readonly number[];
  /** By column: what breaking before it costs, in cut conductors. */
  readonly cuts: readonly number[];
  /** What the first column of a row needs left of its line, for the names of conductors. */
  readonly lead: readonly number[];
}

const ROW = 2;
const CUT = 1;
/** Grows with the square of what a row leaves free, the last one's too: two half rows rather than a full and an empty one. */
const SLACK = 1.5;
/** A column alone in its row: more than a little unevenness, less than a cut conductor. */
const LONE = 0.5;

/** The first column of each row. */
export function fold({ left, right, cuts, lead }: Foldable, width: number): number[] {
  const count = left.length;
  const cost = new Array<number>(count + 1).fill(Number.POSITIVE_INFINITY);
  const from = new Array<number>(count + 1).fill(0);
  cost[0] = 0;
  for (let end = 1; end <= count; end++) {
    for (let start = end - 1; start >= 0; start--) {
      const needs = (right[end - 1] as number) - (left[start] as number) + (lead[start] as number);
      if (needs > width && start < end - 1) break;
      const slack = Math.max(0, (width - needs) / width);
      const total =
        (cost[start] as number) +
        ROW +
        CUT * (start === 0 ? 0 : (cuts[start] as number)) +
        SLACK * slack * slack +
        (end - start === 1 ? LONE : 0);
      if (total < (cost[end] as number)) {
        cost[end] = total;
        from[end] = start;
      }
    }
  }
  const starts: number[] = [];
  for (let end = count; end > 0; end = from[end] as number) starts.unshift(from[end] as number);
  return starts;
}
