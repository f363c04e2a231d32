/** Moments and lengths of time as every screen writes them, where the reader is. */
import { clocksChange } from '../../clocks.ts';
import { speech } from '../speech.ts';

const DAY = { day: 'numeric', month: 'short', year: 'numeric' } as const;
const TIME = { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const;
const WEEKDAY = { weekday: 'short', day: 'numeric', month: 'short' } as const;
const WHEN = { ...WEEKDAY, ...TIME } as const;
const WHEN_NAMED = { ...WHEN, timeZoneName: 'short' } as const;

export const moments = {
  /** `8 Dec 2026` */
  day: (at: number) => speech.moment(at, DAY),
  /** `8 Dec 2026, 20:05` */
  dayAndTime: (at: number) => `${speech.moment(at, DAY)}, ${speech.moment(at, TIME)}`,
  /** `Tue 8 Dec`: a day of these weeks. */
  weekday: (at: number) => speech.moment(at, WEEKDAY),
  /**
   * `Tue 8 Dec, 20:00`: always with the weekday, because that is how people keep a date; on a day on which the clocks change with
   * the name of the time: `Sun 25 Oct, 02:30 CET`.
   */
  when: (at: number) => speech.moment(at, clocksChange(at) ? WHEN_NAMED : WHEN),
};
