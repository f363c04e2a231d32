/** What is kept of one answered question: everything, so that it can be shown and marked again years later. */
import { z } from 'zod';
import { attempt, circuitId, grade, moment, skillAnswer, skillId } from './memory.ts';
import { answer, mark, question } from './question.ts';

/** Who answered: on a machine of one's own simply `me`. */
export const learnerId = z.string().min(1).max(64);

/** One answer, made where it was given; its `id` makes it count once wherever it arrives. */
export const answerRecord = z.strictObject({
  id: z.string().min(1).max(64),
  learner: learnerId,
  at: moment,
  skill: skillId,
  circuit: circuitId,
  question,
  answer,
  mark,
  attempt,
  /** As it followed from the attempt when it was marked. */
  grade,
});

/**
 * The same in short, as the place counts it that keeps it: all that memory and screens need. The record, with its circuit,
 * is a hundred times larger.
 */
export const answerLine = z.strictObject({
  ...skillAnswer.shape,
  /** Order of arrival within the learner, from 1 and without gaps; null where it hasn't arrived yet. */
  number: z.number().int().min(1).nullable(),
  correct: z.boolean(),
  /** The id of the wrong idea, where one alone explains the answer. */
  idea: mark.shape.misconceptions.element.nullable(),
});

export type AnswerRecord = Readonly<z.infer<typeof answerRecord>>;
export type AnswerLine = Readonly<z.infer<typeof answerLine>>;
