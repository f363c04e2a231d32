/** Moments in words, where the reader is: always with the weekday, because that is how people keep a date. */

const HOUR = 3_600_000;
const MINUTE = 60_000;
const DAY = 24 * HOUR;

/** Whether the clocks are put forward or back on that day, where the reader is. */
export function clocksChange(at: number): boolean {
  const date = new Date(at);
  const midnight = (days: number): Date =>
    new Date(date.getFullYear(), date.getMonth(), date.getDate() + days);
  return midnight(0).getTimezoneOffset() !== midnight(1).getTimezoneOffset();
}

/** `Tue 8 Dec, 20:00`; on a day on which the clocks change with the name of the time: `Sun 25 Oct, 02:30 CET`. */
export const whenText = (at: number): string =>
  new Intl.DateTimeFormat('en-GB', {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    ...(clocksChange(at) ? { timeZoneName: 'short' } : {}),
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

/** What clocks are put forward or back by, the larger first. */
const CHANGES = [HOUR, HOUR / 2];

/** What such a field holds: a moment, nothing yet, or a time that the clocks leave out. */
export type Typed =
  | { readonly kind: 'moment'; readonly at: number }
  | { readonly kind: 'empty' }
  | { readonly kind: 'left-out' };

/**
 * Reads such a field. In the night in which the clocks change some times are there twice and some are left out: of two the
 * later one is meant, so that nobody is closed out early; what a clock never shows is not taken for something else.
 */
export function typedMoment(text: string): Typed {
  const at = new Date(text).getTime();
  if (!Number.isFinite(at)) return { kind: 'empty' };
  // A browser may add seconds.
  const wanted = text.slice(0, fieldText(at).length);
  if (fieldText(at) !== wanted) return { kind: 'left-out' };
  const later = CHANGES.map((change) => at + change).find((each) => fieldText(each) === wanted);
  return { kind: 'moment', at: later ?? at };
}

/** The moment in such a field; undefined while it isn't filled in, and for a time that there is not. */
export function momentOf(text: string): number | undefined {
  const typed = typedMoment(text);
  return typed.kind === 'moment' ? typed.at : undefined;
}

/** What is to be known of a time in such a field on a day on which the clocks change; empty on every other. */
export function clockNote(text: string): string {
  const typed = typedMoment(text);
  switch (typed.kind) {
    case 'empty':
      return '';
    case 'left-out':
      return 'There is no such time: the clocks are put forward over it. Choose another.';
    case 'moment':
      return clocksChange(typed.at) ? `The clocks change that day: ${whenText(typed.at)} is meant.` : '';
  }
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
