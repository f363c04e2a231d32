import { type AnswerRecord, answerRecord } from '../../shared/practice.ts';
import { withMarkOfToday } from '../practice/older-marks.ts';
import { formSaid } from '../words/form-said.ts';
import type { Refusal } from '../words/index.ts';
import { firstWrong } from './first-wrong.ts';
import { ApiFailure } from './problems.ts';
import { type Size, sizeOf } from './size-of.ts';

/** What one answer may have: more than ten times a large one. */
export const MOST_IN_ANSWER: Size = { values: 10_000, letters: 262_144 };

export type CheckedAnswer =
  | { readonly ok: true; readonly record: AnswerRecord }
  /** `id` is null where none could be read. */
  | { readonly ok: false; readonly id: string | null; readonly failure: ApiFailure };

/** Control characters and halves of characters, which not every database can keep. */
const UNKEEPABLE = /[\p{Cc}\p{Cs}]/u;

function refused(value: unknown, why: Refusal): CheckedAnswer {
  const id = typeof value === 'object' && value !== null && 'id' in value ? value.id : null;
  return { ok: false, id: typeof id === 'string' ? id.slice(0, 64) : null, failure: new ApiFailure(why) };
}

/** What keeps a record that has the right form from making sense; null when it does. */
function contradiction({ question, answer, mark, attempt }: AnswerRecord): Refusal | null {
  if (answer.kind !== question.kind)
    return { says: 'bad-answer.otherKind', asked: question.kind, given: answer.kind };
  return mark.share === attempt.share ? null : { says: 'bad-answer.otherShare' };
}

/** Looks at one answer as it was sent, in steps; a refused one says why. */
export function* checkAnswer(sent: unknown, learner: string): Generator<undefined, CheckedAnswer> {
  if (!sizeOf(sent, MOST_IN_ANSWER)) return refused(sent, { says: 'answer-too-large', ...MOST_IN_ANSWER });
  yield undefined;
  // A page of an earlier version may still be open, or have been without network since.
  const value = withMarkOfToday(sent);
  const wrongPiece = yield* firstWrong(answerRecord, value);
  if (wrongPiece) return refused(value, { says: 'bad-answer.form', form: formSaid(wrongPiece, value) });
  const reading = answerRecord.safeParse(value);
  if (!reading.success)
    return refused(value, { says: 'bad-answer.form', form: formSaid(reading.error.issues[0]!, value) });
  yield undefined;
  const record = reading.data;
  const unkeepable = (['id', 'learner', 'circuit'] as const).find((field) => UNKEEPABLE.test(record[field]));
  if (unkeepable) return refused(value, { says: 'bad-answer.unkeepable', field: unkeepable });
  if (record.learner !== learner) return refused(value, { says: 'foreign-learner', learner });
  const wrong = contradiction(record);
  return wrong ? refused(value, wrong) : { ok: true, record };
}
