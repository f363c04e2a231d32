/** Moments where the reader is: what is left until one, and fields in which one is typed. */

import { clocksChange } from '../../../words/clocks.ts';
import type { Left } from '../../../words/en/page/homework/common.ts';
import { words } from '../../words.ts';

const HOUR = 3_600_000;
const MINUTE = 60_000;
const DAY = 24 * HOUR;

/** What is left until a moment, in the largest unit of which there are two, down to minutes. Never more than there is. */
export function leftOf(milliseconds: number): Left {
  const whole = (unit: 'days' | 'hours' | 'minutes', of: number): Left => ({
    unit,
    count: Math.floor(milliseconds / of),
  });
  if (milliseconds >= 2 * DAY) return whole('days', DAY);
  if (milliseconds >= 2 * HOUR) return whole('hours', HOUR);
  if (milliseconds >= MINUTE) return whole('minutes', MINUTE);
  return { unit: milliseconds > 0 ? 'less-than-a-minute' : 'none' };
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
  const { clocks } = words('homework').common;
  const typed = typedMoment(text);
  switch (typed.kind) {
    case 'empty':
      return '';
    case 'left-out':
      return clocks.leftOut;
    case 'moment':
      return clocksChange(typed.at) ? clocks.meant(typed.at) : '';
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
