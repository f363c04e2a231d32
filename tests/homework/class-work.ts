/** A class that has handed in: papers answered by rules, so that what a report must say is known. */
import type { HomeworkSet, Paper, PaperMark } from '../../shared/homework.ts';
import type { Answer, Question } from '../../shared/question.ts';
import { countedAnswers, markPaper, papersFor } from '../../src/homework/index.ts';
import { answerBelieving, rightAnswer } from '../../src/questions/index.ts';
import { HOUR, seats } from './course.ts';

/** How one learner answers one question; undefined leaves it out. */
export type Answering = (question: Question, item: number) => Answer | undefined;

export const rightly: Answering = (question) => rightAnswer(question);
export const notAtAll: Answering = () => undefined;

/** As somebody with this misconception answers; right where it makes no difference. */
export const believing =
  (id: string): Answering =>
  (question) =>
    answerBelieving(question, id) ?? rightAnswer(question);

export interface Worked {
  readonly papers: readonly Paper[];
  readonly marks: readonly PaperMark[];
  readonly learners: readonly string[];
}

/** The learners answer in the order given. */
export function work(set: HomeworkSet, answerings: readonly Answering[]): Worked {
  const made = papersFor(set, seats(answerings.length));
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  const marks = made.value.map((paper, index) => {
    const saved = paper.items.flatMap(({ question }, item) => {
      const answer = answerings[index]!(question, item);
      return answer ? [{ item, answer, at: set.opensAt + HOUR, secondsUsed: 30, hint: false }] : [];
    });
    return markPaper(paper, countedAnswers(set, saved));
  });
  return { papers: made.value, marks, learners: made.value.map(({ learner }) => learner) };
}
