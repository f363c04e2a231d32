/** What the server tells those who ask it. */
import { store } from '../store.ts';
import { dates } from './dates.ts';
import { pageMissing } from './page-missing.ts';
import { refusals } from './refusals.ts';
import { rosters } from './rosters.ts';
import { troubles } from './troubles.ts';

/** What is kept in words, in the language of the server that kept it. */
const kept = {
  /** The reason that stands with marks that were typed in. */
  markedOnPaper: 'Marked on paper.',
  /** From where somebody signed in, where the browser doesn't say what it is. */
  anotherProgram: 'another program',
};

export const server = { dates, kept, pageMissing, refusals, rosters, store, troubles };
