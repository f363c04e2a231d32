/** What a tutor reads of homework: sets, papers, reports. */
import { paperCodeProblems as problems } from '../problems/paper-code.ts';
import { competence } from './sets/competence.ts';
import { form } from './sets/form.ts';
import { list } from './sets/list.ts';
import { one } from './sets/one.ts';
import { papers } from './sets/papers.ts';
import { report } from './sets/report.ts';
import { states } from './sets/states.ts';
import { term } from './sets/term.ts';
import { typed } from './sets/typed.ts';

const common = {
  lookAgain: 'Look again',
  leaveIt: 'Leave it',
  keeping: 'Keeping…',
  backToSet: 'Back to the set',
  setsOfClass: 'Sets of the class',
  reckoning: 'Reckoning…',
  learner: 'Learner',
  /** Of whom the server tells no name any more. */
  hasLeft: 'somebody who has left',
};

export const sets = { common, states, list, form, one, papers, typed, problems, report, term, competence };

export type SetsWords = typeof sets;
