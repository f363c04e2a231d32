const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

/** When something comes back, told from now: `now`, `in 3 hours`, `tomorrow`, `in 12 days`, `in 3 months`. */
export function whenInWords(due: number, now: number): string {
  const left = due - now;
  if (left <= MINUTE) return 'now';
  if (left < 1.5 * 60 * MINUTE) return `in ${Math.round(left / MINUTE)} minutes`;
  if (left < DAY) return `in ${Math.round(left / (60 * MINUTE))} hours`;
  const days = Math.round(left / DAY);
  if (days === 1) return 'tomorrow';
  if (days < 60) return `in ${days} days`;
  return `in ${Math.round(days / 30.4)} months`;
}
