import type { Grade, Help, Recall } from '../../shared/memory.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import type { Problem } from '../../shared/problem.ts';
import type { Answer, Mark } from '../../shared/question.ts';
import { afterAnswer, gradeOf, type Recalls, recallOf } from '../memory/index.ts';
import { markAnswer } from '../questions/index.ts';
import type { GradingSaid } from '../words/index.ts';
import { partsCounted } from './parts-counted.ts';
import type { Task } from './types.ts';

export interface Given {
  /** Made where the answer was given; the answer counts once by it. */
  readonly id: string;
  readonly learner: string;
  readonly at: number;
  readonly answer: Answer;
  readonly help: Help;
  readonly secondsUsed: number | null;
}

export interface Judged {
  readonly mark: Mark;
  /** What in the answer couldn't be understood. */
  readonly problems: readonly Problem[];
  readonly grade: Grade;
  /** Why this grade. */
  readonly because: GradingSaid;
  readonly record: AnswerRecord;
  /** The memory of the skill with this answer in it. */
  readonly recall: Recall;
}

/** Marks an answer and works out what it says about the memory. Nothing is kept: that is the store's. */
export function judge(task: Task, given: Given, recalls: Recalls): Judged {
  const { id, learner, at, answer, help, secondsUsed } = given;
  const { mark, problems } = markAnswer(task.question, answer);
  const attempt = {
    share: mark.share,
    parts: partsCounted(task.question, mark),
    help,
    secondsUsed,
    secondsExpected: task.secondsExpected,
  };
  const { grade, because } = gradeOf(attempt);
  const { skill, circuit, question } = task;
  const record: AnswerRecord = { id, learner, at, skill, circuit, question, answer, mark, attempt, grade };
  const recall = afterAnswer(recallOf(recalls, skill), { id, skill, circuit, at, attempt });
  return { mark, problems, grade, because, record, recall };
}

/** A record as the history of the memory needs it. */
export const historyOf = (records: readonly AnswerRecord[]) =>
  records.map(({ id, skill, circuit, at, question, mark, attempt }) => ({
    id,
    skill,
    circuit,
    at,
    attempt: { ...attempt, parts: partsCounted(question, mark) },
  }));
