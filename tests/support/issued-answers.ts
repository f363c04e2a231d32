/** Answers to questions that were issued, as the page makes them. */
import type { IssuedQuestion } from '../../shared/issued.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import { type Course, judge, questionIssued } from '../../src/practice/index.ts';
import { blankAnswer, rightAnswer, secondsExpected } from '../../src/questions/index.ts';

interface Manner {
  readonly id: string;
  readonly learner: string;
  readonly at: number;
  readonly right?: boolean;
  /** Circuits that were answered before. */
  readonly seen?: ReadonlySet<string>;
}

export function answerIssued(
  course: Course,
  issue: IssuedQuestion,
  { id, learner, at, right = true, seen = new Set() }: Manner,
): AnswerRecord {
  const made = questionIssued(course.skills.get(issue.skill)!.recipes, issue, seen);
  if (!made) throw new Error('no question');
  const { question, circuit } = made;
  const task = {
    skill: issue.skill,
    why: 'due' as const,
    question,
    circuit,
    secondsExpected: secondsExpected(question),
    issued: issue.id,
  };
  const answer = right ? rightAnswer(question) : blankAnswer(question);
  const help = { hint: false, explanation: false };
  return judge(task, { id, learner, at, answer, help, secondsUsed: 20 }, new Map()).record;
}
