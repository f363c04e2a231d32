/** Days and times that are given. */
import { speech } from '../speech.ts';

export const moments = {
  noSuchDay: {
    wrong: (given: string) => `${given}: there is no such day.`,
    right: ({ month, days }: { month: number; days: number }) =>
      `${speech.moment(month, { month: 'long', year: 'numeric', timeZone: 'UTC' })} has ${days} days.`,
  },
  noSuchTime: {
    wrong: (given: string) => `${given}: there is no such time.`,
    right: 'The clocks are put forward that night and it is left out. Give another one.',
  },
  noTime: {
    wrong: (given: string) => `${given}: no time.`,
    right: 'For example "2026-03-09 18:00", or +7d for seven days later.',
    rightFor: (option: string) =>
      `For example ${option} "2026-03-09 18:00", or ${option} +7d for seven days later.`,
  },
  moment: (at: number) =>
    speech.moment(at, {
      weekday: 'short',
      day: 'numeric',
      month: 'short',
      year: 'numeric',
      hour: '2-digit',
      minute: '2-digit',
      timeZoneName: 'short',
    }),
};
