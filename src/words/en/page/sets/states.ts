/** Where a set stands, and what may be chosen of it. */
import { moments } from '../moments.ts';

const { when } = moments;

interface Times {
  readonly opensAt: number;
  readonly closesAt: number;
}

export const states = {
  stands: {
    draft: () => 'draft',
    before: ({ opensAt }: Times) => `opens ${when(opensAt)}`,
    open: ({ closesAt }: Times) => `open until ${when(closesAt)}`,
    closed: ({ closesAt }: Times) => `closed ${when(closesAt)}`,
    withdrawn: () => 'withdrawn',
  },
  levels: { small: 'Small circuits', middle: 'Middle', large: 'Large circuits' },
  help: { none: 'No help', hints: 'A hint for each item' },
  review: {
    'after-closing': 'After the set has closed',
    'after-submitting': 'As soon as the paper is handed in',
    never: 'Only with the tutor',
  },
  counts: { best: 'The best attempt counts', last: 'The last attempt counts' },
};
