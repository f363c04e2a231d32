/** Answers of people of known ability, made by chance: somebody who guesses in a certain way, somebody who knows and slips. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Attempt, PartsCounted } from '../../shared/memory.ts';
import { evidenceAfter, ratioOf, weightOf } from '../../src/memory/evidence.ts';
import { gradeOf } from '../../src/memory/index.ts';
import {
  luckWithChoices,
  luckWithCourse,
  luckWithReading,
  luckWithStates,
} from '../../src/questions/luck.ts';

export type Draw = () => number;
export const drawing = (seed: number): Draw => {
  const random = xoroshiro128plus(seed);
  return () => uniformFloat64(random);
};

/** One question: how many parts, and among how many answers each is chosen by somebody who guesses. */
export interface Asked {
  readonly asked: number;
  readonly choices: number;
  readonly luck: number;
}
export const states = (asked: number): Asked => ({ asked, choices: 2, luck: luckWithStates(asked) });
export const course = (asked: number): Asked => ({ asked, choices: 2, luck: luckWithCourse(asked) });
export const wiring = (choices: number): Asked => ({ asked: 1, choices, luck: luckWithChoices(choices) });
/** A meter shows one of five things. */
export const reading: Asked = { asked: 1, choices: 5, luck: luckWithReading() };

/** What is asked of a skill, time after time. */
export type Asks = (draw: Draw) => Asked;

/** How many parts of a question somebody gets right. */
export type Answers = (asked: Asked, draw: Draw) => number;

/** How many of so many come off. */
const countOf = (tries: number, chance: number, draw: Draw): number =>
  Array.from({ length: tries }, () => (draw() < chance ? 1 : 0)).reduce<number>((sum, one) => sum + one, 0);

const slips =
  (chance: number): Answers =>
  ({ asked }, draw) =>
    countOf(asked, 1 - chance, draw);

/** Knows it, and slips in one part of twenty. */
export const knows = slips(0.05);

/** Takes any answer to each part. */
export const anyhow: Answers = ({ asked, choices }, draw) => countOf(asked, 1 / choices, draw);

/** All right as often as questions give away without the drawing, and else all but one part: nobody guesses better. */
export const atItsBest: Answers = ({ asked, luck }, draw) => (draw() < luck ? asked : asked - 1);

/** The same of everything asked: all right as often as questions give away, and else half of it. */
export const allAlike: Answers = ({ asked, luck }, draw) =>
  draw() < luck ? asked : Math.min(asked - 1, Math.round(asked / 2));

/** The same from the answer of that number on, and before it somebody who guesses. */
export const from =
  (number: number, after: Answers): ((number: number) => Answers) =>
  (at) =>
    at < number ? anyhow : after;

const attemptOf = (parts: PartsCounted): Attempt => ({
  share: parts.right === parts.asked ? 1 : 0,
  parts,
  help: { hint: false, explanation: false },
  secondsUsed: null,
  secondsExpected: 60,
});

/** Answers to so many questions, one after the other. */
export function* attemptsOf(
  asks: Asks,
  answers: (number: number) => Answers,
  count: number,
  draw: Draw,
): Generator<Attempt> {
  for (let number = 1; number <= count; number++) {
    const question = asks(draw);
    const { asked, luck } = question;
    yield attemptOf({ asked, luck, right: answers(number)(question, draw) });
  }
}

/** The evidence after each of them, each on another circuit. */
export function* evidenceOf(attempts: Iterable<Attempt>): Generator<number> {
  let evidence = 0;
  let number = 0;
  for (const attempt of attempts) {
    number++;
    evidence = evidenceAfter(evidence, number, weightOf(ratioOf(attempt), gradeOf(attempt).grade, true));
    yield evidence;
  }
}
