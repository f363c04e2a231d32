/** What the kinds say alike that ask how several things stand. */

import { say } from '../../statement.ts';
import type { AnswerSaid } from '../answers.ts';
import { answers } from '../answers.ts';

/** The first two of the states to choose from. */
export interface YesAndNo {
  readonly yes: AnswerSaid;
  readonly no: AnswerSaid;
}

/** How an answer is typed, without an example that could be the right one. */
export const list = (what: string, { yes, no }: YesAndNo): string =>
  `Write each ${what} with its state, or the states in this order; or only those that are ${say(answers, yes)}: the others then count as ${say(answers, no)}. "None" says that of all.`;

/** What "operated" means of a timer. */
export const TIMER = 'A timer has operated when its contacts have changed over.';
