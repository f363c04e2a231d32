/** How a made-up learner answers: more rightly the more a skill was practised, and wrongly in a way of his own. */
import type { Answer, Question } from '../../../shared/question.ts';
import type { Random } from '../../generator/index.ts';
import { MISCONCEPTIONS } from '../../misconceptions/index.ts';
import { answerBelieving, blankAnswer, rightAnswer } from '../../questions/index.ts';
import type { MadeUpLearner } from './made-up-people.ts';

/** Questions of one skill after which two thirds of what can be learnt are learnt. */
const LEARNT_AFTER = 3;
/** Misconceptions tried before an answer is left out. */
const TRIES = 5;

/** The chance of a right answer after so many questions of the same skill. */
export const chanceOf = ({ talent }: MadeUpLearner, practised: number): number => {
  const least = 0.25 + 0.35 * talent;
  const most = 0.6 + 0.38 * talent;
  return least + (most - least) * (1 - Math.exp(-practised / LEARNT_AFTER));
};

const isSame = (one: Answer, other: Answer): boolean => JSON.stringify(one) === JSON.stringify(other);

export function madeUpAnswer(
  learner: MadeUpLearner,
  question: Question,
  practised: number,
  random: Random,
): Answer {
  const right = rightAnswer(question);
  if (random.chance(chanceOf(learner, practised))) return right;
  const others = random.sample(
    MISCONCEPTIONS.map(({ id }) => id),
    TRIES,
  );
  for (const id of learner.leaning === null ? others : [learner.leaning, ...others]) {
    const answer = answerBelieving(question, id);
    if (answer && !isSame(answer, right)) return answer;
  }
  return blankAnswer(question);
}
