/** What can be wrong with a question bank, beside its circuits, acts, faults and questions. */
import type { StatementOf } from '../../statement.ts';
import { bankBlockProblems } from './bank-blocks.ts';
import { bankFileProblems } from './bank-files.ts';

export const bankProblems = { ...bankFileProblems, ...bankBlockProblems };
export type BankProblemSaid = StatementOf<typeof bankProblems>;
