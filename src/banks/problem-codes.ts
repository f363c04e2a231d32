/**
 * The codes of everything that can be wrong with a question bank, beside those of the circuits, acts, faults and
 * questions in it. Once given, a code keeps its meaning; one that is given up is not used again. docs/errors.md says what
 * each means.
 */
import type { BankProblemSaid } from '../words/index.ts';
import { type CodeOf, problemSaying } from '../words/problems.ts';

export const BANK_CODES = [
  'bank-too-large',
  'bank-too-many-problems',
  'bank-character',
  'bank-no-front-matter',
  'bank-front-matter',
  'bank-unknown-key',
  'bank-repeated-key',
  'bank-missing-key',
  'bank-value',
  'bank-file-name',
  'bank-repeated-name',
  'bank-repeated-order',
  'bank-unknown-skill',
  'bank-unknown-family',
  'bank-recipe-size',
  'bank-recipe-empty',
  'bank-markdown',
  'bank-html',
  'bank-link',
  'bank-heading',
  'bank-unknown-heading',
  'bank-unknown-block',
  'bank-unclosed-block',
  'bank-block-place',
  'bank-setting',
  'bank-missing-setting',
  'bank-field',
  'bank-rules',
  'bank-unknown-circuit',
  'bank-unknown-item',
  'bank-unknown-state',
  'bank-repeated-item',
  'bank-missing-answer',
  'bank-not-confirmed',
] as const satisfies readonly CodeOf<BankProblemSaid['says']>[];

export const bankProblem = problemSaying<BankProblemSaid>;
