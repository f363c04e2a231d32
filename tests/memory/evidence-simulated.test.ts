/** What evidence says of people whose ability is known. docs/memory.md has the same figures. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Recall } from '../../shared/memory.ts';
import { afterAnswer, PROVEN_AT, SHOWN_AT } from '../../src/memory/index.ts';
import { DAY, START } from './arbitraries.ts';
import {
  type Answers,
  type Asks,
  allAlike,
  anyhow,
  atItsBest,
  attemptsOf,
  course,
  drawing,
  evidenceOf,
  from,
  knows,
  reading,
  states,
  wiring,
} from './simulated-answers.ts';

const between = (low: number, high: number, at: number): number => low + Math.floor(at * (high - low + 1));

/** What skills ask, from the least to the most. */
const SKILLS: Readonly<Record<string, Asks>> = {
  'two lamps': () => states(2),
  'three lamps': () => states(3),
  'two to eight terminals': (draw) => states(between(2, 8, draw())),
  'sequences of four to twelve': (draw) => course(between(4, 12, draw())),
  'wirings with four choices': () => wiring(4),
  meters: () => reading,
  'one of each in turn': (draw) => [states(4), course(8), wiring(5), reading][between(0, 3, draw())]!,
};

/** For each of so many lives, the number of the answer with which it is first so; infinite where it never is. */
function firstOf(
  asks: Asks,
  answers: (number: number) => Answers,
  { lives, count, seed }: { lives: number; count: number; seed: number },
  enough = PROVEN_AT,
): readonly number[] {
  const draw = drawing(seed);
  return Array.from({ length: lives }, () => {
    let number = 0;
    for (const evidence of evidenceOf(attemptsOf(asks, answers, count, draw))) {
      number++;
      if (evidence >= enough) return number;
    }
    return Number.POSITIVE_INFINITY;
  }).toSorted((one, other) => one - other);
}

const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.ceil(share * sorted.length) - 1]!;
const shareOf = (numbers: readonly number[]): number =>
  numbers.filter((number) => Number.isFinite(number)).length / numbers.length;

const page = readFileSync(new URL('../../docs/memory.md', import.meta.url), 'utf8');
/** The rows of the table that begin with the name of a skill: median, 95 of 100, taken back, learnt late. */
const told = new Map(
  [...page.matchAll(/^\| ([a-z ]+) \| (\d+) \| (\d+) \| ([\d.]+) % \| (\d+) \|$/gm)].map(
    ([, name, ...numbers]) => [name!, numbers.map(Number)],
  ),
);

describe.each(Object.entries(SKILLS))('%s', (name, asks) => {
  it.each([
    ['any answer', anyhow],
    ['the same of everything', allAlike],
    ['as well as questions allow, and all but one part right otherwise', atItsBest],
  ])('are proven by fewer than 1 in 100 who guess for 300 answers: %s', (_, guesser) => {
    const first = firstOf(asks, () => guesser, { lives: 500, count: 300, seed: 20_261 });
    expect(shareOf(first)).toBeLessThan(0.01);
  });

  it('are proven, by somebody who knows and slips in one part of twenty, with as many answers as docs/memory.md says', () => {
    const first = firstOf(asks, () => knows, { lives: 1000, count: 300, seed: 20_262 });
    expect([quantile(first, 0.5), quantile(first, 0.95)]).toEqual(told.get(name)!.slice(0, 2));
  });

  it('are shown, by somebody who knows, with three answers mostly', () => {
    const first = firstOf(asks, () => knows, { lives: 1000, count: 300, seed: 20_263 }, SHOWN_AT);
    expect(quantile(first, 0.5)).toBeLessThanOrEqual(3);
  });

  it('lose their proof, with somebody who knows, no more often than with 1 of 40 answers', () => {
    const draw = drawing(20_264);
    let [proven, lost] = [0, 0];
    for (let life = 0; life < 300; life++) {
      let was = false;
      for (const evidence of evidenceOf(attemptsOf(asks, () => knows, 100, draw))) {
        const is = evidence >= PROVEN_AT;
        if (was) proven++;
        if (was && !is) lost++;
        was = is;
      }
    }
    expect(lost / proven).toBeLessThan(1 / 40);
    expect((100 * lost) / proven).toBeCloseTo(told.get(name)![2]!, 1);
  });

  it('are proven soon by somebody who guesses for thirty answers and knows from then on', () => {
    const first = firstOf(asks, from(31, knows), { lives: 1000, count: 300, seed: 20_265 });
    expect(quantile(first, 0.5) - 30).toBe(told.get(name)![3]);
  });
});

it('is what the memory keeps', () => {
  const attempts = [...attemptsOf(SKILLS['one of each in turn']!, from(20, knows), 60, drawing(20_266))];
  let recall: Recall = { kind: 'new' };
  const kept = attempts.map((attempt, number) => {
    const [id, at] = [`c${number}`, START + number * DAY];
    const after = afterAnswer(recall, { id, skill: 'simulated', circuit: id, at, attempt });
    recall = after;
    return after.evidence;
  });
  expect(kept).toEqual([...evidenceOf(attempts)]);
});
