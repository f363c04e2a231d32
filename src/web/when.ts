import { words } from './words.ts';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

/** When something comes back, as it is read in a table. */
export function whenInWords(due: number, now: number): string {
  const { comesBack } = words('first').moments;
  const left = due - now;
  if (left <= 60_000) return comesBack.now;
  if (left < 20 * HOUR)
    return left < 1.5 * HOUR ? comesBack.withinTheHour : comesBack.inHours(Math.round(left / HOUR));
  const days = Math.round(left / DAY);
  if (days === 1) return comesBack.tomorrow;
  return days < 60 ? comesBack.inDays(days) : comesBack.inMonths(Math.round(days / 30.4));
}
