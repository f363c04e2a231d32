const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** When something comes back, as it is read in a table. */
export function whenInWords(due: number, now: number): string {
  const left = due - now;
  if (left <= 60_000) return 'now';
  if (left < 20 * HOUR) return left < 1.5 * HOUR ? 'within the hour' : `in ${Math.round(left / HOUR)} hours`;
  const days = Math.round(left / DAY);
  if (days === 1) return 'tomorrow';
  return days < 60 ? `in ${days} days` : `in ${Math.round(days / 30.4)} months`;
}
