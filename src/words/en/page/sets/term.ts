/** What all issued sets of a class say together. */

import { speech } from '../../speech.ts';
import { moments } from '../moments.ts';
import { shownIn } from './report.ts';

const { day } = moments;

export const term = {
  title: 'All sets together',
  sets: (count: number) => speech.plural(count, { one: '1 set', other: `${count} sets` }),
  lastCloses: (at: number) => `the last closes ${day(at)}`,
  waiting: (papers: number) =>
    speech.plural(papers, {
      one: '1 paper still to be marked.',
      other: `${papers} papers still to be marked.`,
    }),
  none: 'No set has been issued yet.',
  fromSetToSet: 'From set to set',
  skills: 'Skills over all sets',
  ideas: 'Wrong ideas over all sets',
  shownIn,
};
