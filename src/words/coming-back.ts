/** When something comes back, told from now. */

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;
const DAYS_A_MONTH = 30.4;

/** In so many of a unit: the unit in which it is told, and how many. */
export type ComingBack = readonly ['now' | 'minutes' | 'hours' | 'tomorrow' | 'days' | 'months', number];

/**
 * How it is told that something comes back in so many milliseconds.
 *
 * @param hours - up to how many hours are told as such, before it is tomorrow
 */
export function comingBack(left: number, hours: number): ComingBack {
  if (left <= MINUTE) return ['now', 0];
  if (left < 1.5 * HOUR) return ['minutes', Math.round(left / MINUTE)];
  if (left < hours * HOUR) return ['hours', Math.round(left / HOUR)];
  const days = Math.round(left / DAY);
  if (days === 1) return ['tomorrow', 1];
  return days < 60 ? ['days', days] : ['months', Math.round(days / DAYS_A_MONTH)];
}
