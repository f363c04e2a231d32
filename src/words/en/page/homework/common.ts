/** Said on several screens of homework, to learners and to tutors. */

import { speech } from '../../speech.ts';
import { moments } from '../moments.ts';
import { marks } from './figures.ts';

const { when } = moments;

/** How much time is left: so many whole units, or hardly any. */
export type Left =
  | { readonly unit: 'days' | 'hours' | 'minutes'; readonly count: number }
  | { readonly unit: 'less-than-a-minute' | 'none' };

/** `2 days` */
export function left(time: Left): string {
  switch (time.unit) {
    case 'days':
      return speech.plural(time.count, { one: '1 day', other: `${time.count} days` });
    case 'hours':
      return speech.plural(time.count, { one: '1 hour', other: `${time.count} hours` });
    case 'minutes':
      return speech.plural(time.count, { one: '1 minute', other: `${time.count} minutes` });
    case 'less-than-a-minute':
      return 'less than a minute';
    case 'none':
      return 'none';
  }
}

export const common = {
  homework: 'Homework',
  fetching: 'Fetching…',
  marks,
  /** Of a time that is typed. */
  clocks: {
    leftOut: 'There is no such time: the clocks are put forward over it. Choose another.',
    meant: (at: number) => `The clocks change that day: ${when(at)} is meant.`,
  },
  /** From one item to another. */
  walk: { back: 'Back', all: 'All items', next: 'Next' },
  itemOf: ({ number, count }: { number: number; count: number }) => `Item ${number} of ${count}`,
  attempt: (attempt: number) => `Attempt ${attempt}`,
  handedIn: (at: number) => `Handed in ${when(at)}`,
};
