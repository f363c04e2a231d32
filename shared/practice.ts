/** What is kept of one answered question: everything, so that it can be shown and marked again years later. */
import { z } from 'zod';
import { attempt, circuitId, grade, moment, skillId } from './memory.ts';
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

export type AnswerRecord = Readonly<z.infer<typeof answerRecord>>;
