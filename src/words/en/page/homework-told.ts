/** What is said of homework where its screens are not: while somebody practises, or erases what is kept. */

import { speech } from '../speech.ts';
import { moments } from './moments.ts';

const { when } = moments;

export const homeworkTold = {
  /** The most urgent of the sets that are to be handed in, and how many there are besides. */
  open: ({ title, closesAt, more }: { title: string; closesAt: number; more: number }) =>
    more === 0
      ? `Homework is open: “${title}” until ${when(closesAt)}`
      : `Homework is open: “${title}” until ${when(closesAt)}, and ${more} more`,
  /** Why nothing is erased: only this device has these answers. */
  wouldBeLost: (answers: number) =>
    speech.plural(answers, {
      one: 'Nothing was erased: 1 answer to homework has not been sent, and would be lost. Erase again as soon as there is a network.',
      other: `Nothing was erased: ${answers} answers to homework have not been sent, and would be lost. Erase again as soon as there is a network.`,
    }),
  keepsNothing:
    'This browser does not let the page keep anything, so answers could be lost. A private window may be why.',
};
