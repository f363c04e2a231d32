import { speech } from './speech.ts';

/** When something comes back. */
export const comingBack = {
  now: () => 'now',
  minutes: (minutes: number) =>
    speech.plural(minutes, { one: 'in 1 minute', other: `in ${minutes} minutes` }),
  hours: (hours: number) => speech.plural(hours, { one: 'in 1 hour', other: 'in # hours' }),
  tomorrow: () => 'tomorrow',
  days: (days: number) => speech.plural(days, { one: 'in 1 day', other: 'in # days' }),
  months: (months: number) => speech.plural(months, { one: 'in 1 month', other: `in ${months} months` }),
};
