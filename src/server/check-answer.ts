import type { AnswerResult, ApiProblemCode } from '../../shared/api.ts';
import { type AnswerRecord, answerRecord } from '../../shared/practice.ts';
import { withMarkOfToday } from '../practice/older-marks.ts';
import { issueText } from './failure-of.ts';
import { firstWrong, type Issue } from './first-wrong.ts';
import { type Size, sizeOf } from './size-of.ts';

/** What one answer may have: more than ten times a large one. */
export const MOST_IN_ANSWER: Size = { values: 10_000, letters: 262_144 };

type Refused = Extract<AnswerResult, { result: 'refused' }>;
export type CheckedAnswer =
  | { readonly ok: true; readonly record: AnswerRecord }
  | { readonly ok: false; readonly refused: Refused };

/** Control characters and halves of characters, which not every database can keep. */
const UNKEEPABLE = /[\p{Cc}\p{Cs}]/u;

function refused(value: unknown, code: ApiProblemCode, message: string, hint: string): CheckedAnswer {
  const id = typeof value === 'object' && value !== null && 'id' in value ? value.id : null;
  const known = typeof id === 'string' ? id.slice(0, 64) : null;
  return { ok: false, refused: { result: 'refused', id: known, problem: { code, message, hint } } };
}

/** What keeps a record that has the right form from making sense; empty when it does. */
function contradiction({ question, answer, mark, attempt }: AnswerRecord): string {
  if (answer.kind !== question.kind)
    return `The question is of the kind ${question.kind} and the answer of the kind ${answer.kind}.`;
  if (mark.share !== attempt.share) return 'The mark and the attempt have different shares.';
  return '';
}

const badForm = (value: unknown, issue: Issue | undefined): CheckedAnswer =>
  refused(
    value,
    'bad-answer',
    `The answer is not of the form wanted. ${issueText(issue)}`,
    'Send it as it was made, without changes.',
  );

/** Looks at one answer as it was sent, in steps; a refused one says why. */
export function* checkAnswer(sent: unknown, learner: string): Generator<undefined, CheckedAnswer> {
  if (!sizeOf(sent, MOST_IN_ANSWER))
    return refused(
      sent,
      'answer-too-large',
      `The answer has more than ${MOST_IN_ANSWER.values} values or ${MOST_IN_ANSWER.letters} letters.`,
      'Circuits of this size can not be practised.',
    );
  yield undefined;
  // A page of an earlier version may still be open, or have been without network since.
  const value = withMarkOfToday(sent);
  const wrongPiece = yield* firstWrong(answerRecord, value);
  if (wrongPiece) return badForm(value, wrongPiece);
  const reading = answerRecord.safeParse(value);
  if (!reading.success) return badForm(value, reading.error.issues[0]);
  yield undefined;
  const record = reading.data;
  const unkeepable = (['id', 'learner', 'circuit'] as const).find((field) => UNKEEPABLE.test(record[field]));
  if (unkeepable)
    return refused(
      value,
      'bad-answer',
      `There are characters in ${unkeepable} that can't be kept.`,
      'Use letters, digits and signs.',
    );
  if (record.learner !== learner)
    return refused(
      value,
      'foreign-learner',
      'The answer is somebody else’s.',
      `Send it as the one who gave it; here everything belongs to ${learner}.`,
    );
  const wrong = contradiction(record);
  if (wrong) return refused(value, 'bad-answer', wrong, 'Send it as it was made, without changes.');
  return { ok: true, record };
}
