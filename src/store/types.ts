import type { Recall } from '../../shared/memory.ts';
import type { AnswerRecord } from '../../shared/practice.ts';

/**
 * What is kept. Answers are append-only and are the truth; recall states follow from them and are kept only so that
 * they needn't be worked out each time.
 */
export interface Store {
  /**
   * Keeps an answer and the recall state that it led to, both or neither; when it returns, they are on the disk.
   *
   * @returns false when an answer with this id is kept already; nothing is changed then
   */
  keepAnswer(record: AnswerRecord, recall: Recall): Promise<boolean>;
  /** All answers of a learner, in the order in which they arrived. */
  answersOf(learner: string): Promise<readonly AnswerRecord[]>;
  /** The recall states of a learner by skill; a skill that is not in it is new. */
  recallsOf(learner: string): Promise<ReadonlyMap<string, Recall>>;
  /** Replaces the recall states of a learner, when they have been worked out again from the answers. */
  replaceRecalls(learner: string, recalls: ReadonlyMap<string, Recall>): Promise<void>;
  close(): Promise<void>;
}
