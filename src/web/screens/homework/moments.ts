/** Moments in words, where the reader is: always with the weekday, because that is how people keep a date. */

const HOUR = 3_600_000;
const MINUTE = 60_000;
const DAY = 24 * HOUR;

/** `Tue 8 Dec, 20:00` */
export const whenText = (at: number): string =>
  new Intl.DateTimeFormat('en-GB', {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).format(at);

/** `8 Dec 2026` */
export const dayText = (at: number): string =>
  new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' }).format(at);

/** What is left until a moment: `2 days`, `5 hours`, `12 minutes`, `less than a minute`. Never more than there is. */
export function leftText(milliseconds: number): string {
  const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
  if (milliseconds >= 2 * DAY) return counted(Math.floor(milliseconds / DAY), 'day');
  if (milliseconds >= 2 * HOUR) return counted(Math.floor(milliseconds / HOUR), 'hour');
  if (milliseconds >= MINUTE) return counted(Math.floor(milliseconds / MINUTE), 'minute');
  return milliseconds > 0 ? 'less than a minute' : 'none';
}

const two = (number: number): string => String(number).padStart(2, '0');

/** A moment as a `datetime-local` field wants it, where the reader is. */
export function fieldText(at: number): string {
  const date = new Date(at);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}T${two(date.getHours())}:${two(date.getMinutes())}`;
}

/** What such a field holds; undefined while it isn't filled in. */
export function momentOf(text: string): number | undefined {
  const at = new Date(text).getTime();
  return Number.isFinite(at) ? at : undefined;
}

/** From now until that day next week at eight in the evening. */
export function usualTimes(now: number): { readonly opensAt: number; readonly closesAt: number } {
  const closing = new Date(now);
  closing.setDate(closing.getDate() + 7);
  closing.setHours(20, 0, 0, 0);
  const opening = new Date(now);
  opening.setSeconds(0, 0);
  return { opensAt: opening.getTime(), closesAt: closing.getTime() };
}
