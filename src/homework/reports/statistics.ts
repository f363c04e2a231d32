/**
 * Item statistics of classical test theory, on a table of scores: one row for each learner, one column for each item. Where
 * a figure isn't defined (too few learners, nobody differs) it is null, never a number that looks like one.
 */

export type Scores = readonly (readonly number[])[];

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Sample variance (divisor n - 1); 0 for fewer than two. */
function variance(values: readonly number[]): number {
  if (values.length < 2) return 0;
  const middle = mean(values);
  return values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1);
}

/** Below this a variance is rounding noise of equal scores. */
const NOTHING = 1e-12;

/** Pearson's correlation, -1 to 1; null where either side doesn't vary. With a score of 0 and 1 it is the point-biserial one. */
export function correlation(one: readonly number[], other: readonly number[]): number | null {
  const [a, b] = [variance(one), variance(other)];
  if (one.length < 3 || a < NOTHING || b < NOTHING) return null;
  const [meanOne, meanOther] = [mean(one), mean(other)];
  const together =
    one.reduce((sum, value, index) => sum + (value - meanOne) * (other[index]! - meanOther), 0) /
    (one.length - 1);
  return Math.max(-1, Math.min(1, together / Math.sqrt(a * b)));
}

const columnOf = (scores: Scores, item: number): number[] => scores.map((row) => row[item]!);
const totalsOf = (scores: Scores): number[] =>
  scores.map((row) => row.reduce((sum, value) => sum + value, 0));

/** Facility: the mean score as a share of the full one, 0 (nobody) to 1 (everybody). Null without learners. */
export const facility = (scores: Scores, item: number, full: number): number | null =>
  scores.length === 0 ? null : mean(columnOf(scores, item)) / full;

/**
 * Discrimination: how the item goes with the rest of the paper. The correlation of its score with the total without it, so
 * that it isn't compared with itself (corrected item-total correlation).
 */
export function discrimination(scores: Scores, item: number): number | null {
  const own = columnOf(scores, item);
  return correlation(
    own,
    totalsOf(scores).map((total, row) => total - own[row]!),
  );
}

/** Share of the class in the upper and in the lower group (Kelley 1939). */
export const GROUP_SHARE = 0.27;

/**
 * Upper-lower index D: the mean share of the item's marks in the best group less that in the weakest. Learners of one total
 * at the edge of a group count in it with equal parts, so that the order of a list decides nothing. Null where everybody
 * has the same total or there are fewer than four learners.
 */
export function upperLower(
  scores: Scores,
  item: number,
  full: number,
  share: number = GROUP_SHARE,
): number | null {
  const totals = totalsOf(scores);
  if (scores.length < 4 || variance(totals) < NOTHING) return null;
  const size = Math.max(1, Math.round(share * scores.length));
  const groupMean = (better: (total: number, other: number) => boolean): number => {
    let [earned, places] = [0, size];
    const levels = [...new Set(totals)].sort((one, other) => (better(one, other) ? -1 : 1));
    for (const level of levels) {
      const rows = scores.filter((_, row) => totals[row] === level);
      const taken = Math.min(rows.length, places);
      earned += taken * mean(columnOf(rows, item));
      places -= taken;
      if (places === 0) break;
    }
    return earned / size;
  };
  return (groupMean((one, other) => one > other) - groupMean((one, other) => one < other)) / full;
}

/**
 * Cronbach's alpha: how far the items measure one thing. k/(k-1) (1 - sum of the items' variances / variance of the total);
 * for scores of 0 and 1 the same as Kuder and Richardson's formula 20. Null for fewer than two items or learners, or equal
 * totals.
 */
export function alpha(scores: Scores): number | null {
  const items = scores[0]?.length ?? 0;
  const whole = variance(totalsOf(scores));
  if (items < 2 || scores.length < 2 || whole < NOTHING) return null;
  let parts = 0;
  for (let item = 0; item < items; item++) parts += variance(columnOf(scores, item));
  return (items / (items - 1)) * (1 - parts / whole);
}
