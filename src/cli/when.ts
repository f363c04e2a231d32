import type { CommandWords } from '../words/commands.ts';

const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;

/** When something comes back, told from now: `now`, `in 3 hours`, `tomorrow`, `in 12 days`, `in 3 months`. */
export function whenInWords(due: number, now: number, { when: said }: CommandWords): string {
  const left = due - now;
  if (left <= MINUTE) return said.now;
  if (left < 1.5 * 60 * MINUTE) return said.inMinutes(Math.round(left / MINUTE));
  if (left < DAY) return said.inHours(Math.round(left / (60 * MINUTE)));
  const days = Math.round(left / DAY);
  if (days === 1) return said.tomorrow;
  if (days < 60) return said.inDays(days);
  return said.inMonths(Math.round(days / 30.4));
}
