import type { SkillAnswer } from '../../../shared/memory.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Mark } from '../../../shared/question.ts';

/**
 * What the screens and the memory need of an answer. The record itself, with its circuit and explanation, is a hundred
 * times larger: a long history of them would be slow to open on a phone.
 */
export interface AnswerLine extends SkillAnswer {
  readonly correct: boolean;
  /** The wrong idea, where one alone explains the answer. */
  readonly idea: Mark['misconceptions'][number] | null;
}

export function lineOf({ id, skill, circuit, at, attempt, mark }: AnswerRecord): AnswerLine {
  const [only, another] = mark.misconceptions;
  return { id, skill, circuit, at, attempt, correct: mark.correct, idea: only && !another ? only : null };
}
