/** What no way of guessing may reach. */
import type { QuestionKind } from '../../shared/question.ts';
import type { Guessed } from './measure.ts';

/** Whole questions right at most; of wirings with so many choices a twentieth more than by chance. */
const MOST_RIGHT: Readonly<Record<QuestionKind, number>> = {
  'lamp-states': 0.15,
  'input-states': 0.15,
  'relay-states': 0.15,
  'still-live': 0.15,
  sequence: 0.1,
  meter: 0.2,
  wiring: 0.05,
};

/** @param choices - of a wiring question, on average one in so many */
export const mostRight = (kind: QuestionKind, choices: number): number =>
  MOST_RIGHT[kind] + (kind === 'wiring' ? choices : 0);

/** What guessing may earn of the marks, what it loses counted too; and what it still earns where that isn't kept yet. */
const MOST_NET = 0.2;
const EARNED: Partial<Record<QuestionKind, number>> = {
  'still-live': 0.3,
  'input-states': 0.24,
  meter: 0.21,
  sequence: 0.3,
};
export const mostNet = (kind: QuestionKind): number => EARNED[kind] ?? MOST_NET;

/** Of what somebody who learns does best with. */
export const bestOf = (rows: readonly Guessed[], of: 'right' | 'share' | 'net'): Guessed =>
  rows.reduce((best, row) => (row[of] > best[of] ? row : best));
