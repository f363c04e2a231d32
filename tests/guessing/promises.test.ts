/** What the title of a skill promises is in its questions. */
import { describe, expect, it } from 'vitest';
import type { Recipe } from '../../shared/bank.ts';
import type { Question } from '../../shared/question.ts';
import { anatomyOf, deviceOf, readAs } from '../../src/circuit/index.ts';
import { featuresOf, generate } from '../../src/generator/index.ts';
import { candidateFor } from '../../src/practice/candidate.ts';
import { FULL_GROWTH } from '../../src/practice/growth.ts';
import { oneHappens } from '../../src/questions/happenings.ts';
import { drawn } from '../support/drawn.ts';
import { ownBank } from '../support/own-bank.ts';

const COUNT = drawn(100);

const recipesOf = (skill: string): readonly Recipe[] =>
  ownBank()
    .topics.flatMap(({ skills }) => skills)
    .find(({ id }) => id === skill)!.recipes;

/** Questions of a skill, in all sizes. */
const questionsOf = (skill: string): Question[] =>
  Array.from({ length: COUNT }, (_, number) =>
    candidateFor(recipesOf(skill), number % (FULL_GROWTH + 1), `promised/${skill}/${number}`),
  ).flatMap((made) => (made ? [made.question] : []));

const shareOf = (questions: readonly Question[], is: (question: Question) => boolean): number =>
  questions.filter(is).length / questions.length;

describe('what is promised', () => {
  it('of faults of a healthy relay: a fault or a loss in every question', () => {
    const questions = questionsOf('healthy-relay-faults');
    expect(questions.length).toBeGreaterThan(COUNT / 3);
    expect(
      shareOf(questions, (question) => oneHappens(['fault', 'loss'], question, question.kind === 'sequence')),
    ).toBe(1);
  });

  it('of a seal-in followed over a while: loss, trip and fault in a fifth each', () => {
    const questions = questionsOf('seal-in-sequence');
    for (const happening of ['loss', 'trip', 'fault'] as const)
      expect(
        shareOf(questions, (question) => oneHappens([happening], question, question.kind === 'sequence')),
        happening,
      ).toBeGreaterThan(0.2);
  });

  it('of a starter with power and control: something of both is asked in every question', () => {
    const questions = questionsOf('live-with-power-paths');
    // The others have too few terminals that could as well be live as dead.
    expect(questions.length).toBeGreaterThan(COUNT / 2);
    const shares = questions.map(({ circuit, ...question }) => {
      const asked = 'asked' in question ? question.asked.map(String) : [];
      const power = asked.filter((item) => {
        const [name = '', terminal = ''] = item.split(':');
        const { contacts, loads } = anatomyOf(deviceOf(circuit, name)!);
        const feeds = circuit.devices.some(
          (device) => device.name === name && 'poles' in device && device.poles === 3,
        );
        return (
          loads.some(({ role, from, to }) => readAs(role) === 'winding' && [from, to].includes(terminal)) ||
          contacts.some(({ main, from, to }) => (main || feeds) && [from, to].includes(terminal))
        );
      });
      return power.length / asked.length;
    });
    expect(Math.min(...shares)).toBeGreaterThan(0);
    expect(Math.max(...shares)).toBeLessThan(1);
  });

  it('of changeover legs: something that hangs on one is asked', () => {
    for (const { circuit, ...question } of questionsOf('changeover-legs')) {
      const asked = new Set('asked' in question ? question.asked.map(String) : []);
      const onLegs = circuit.paths.filter(({ steps }) => {
        const legs = steps.some(({ device, enter, leave }) => {
          const found = deviceOf(circuit, device);
          return (
            found !== undefined &&
            anatomyOf(found).contacts.some(
              ({ changeover, from, to }) =>
                changeover && [from, to].includes(enter) && [from, to].includes(leave ?? ''),
            )
          );
        });
        return legs && steps.some(({ device }) => asked.has(device));
      });
      expect(onLegs.length, question.seed).toBeGreaterThan(0);
    }
  });
});

/** Families of the recipes with a range of sizes. */
const RANGES = ownBank().topics.flatMap(({ skills }) =>
  skills.flatMap(({ id, recipes }) =>
    recipes.flatMap(({ families, size: [smallest, largest] }) =>
      largest - smallest >= 3 ? families.map((family) => ({ skill: id, family, smallest, largest })) : [],
    ),
  ),
);

describe.each([
  ...new Map(RANGES.map((range) => [`${range.family} ${range.smallest} to ${range.largest}`, range])),
])('size of %s', (_, { family, smallest, largest }) => {
  /** Levels of relays and ways beside one another, what happens and what holds itself. */
  const depthAt = (size: number): number => {
    const depths = Array.from({ length: drawn(30) }, (_, seed) => {
      const made = generate({ family, size, seed: `depth ${seed}` });
      if (!made.ok) return [];
      const { levels, parallel, memories } = featuresOf(made.accepted);
      return [levels + parallel + memories];
    }).flat();
    return depths.reduce((sum, depth) => sum + depth, 0) / depths.length;
  };

  it('brings depth, not copies alone', () => {
    expect(depthAt(largest)).toBeGreaterThan(depthAt(smallest) * 1.25);
  });
});
