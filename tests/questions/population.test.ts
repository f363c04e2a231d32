/** Many questions together: no pattern of answers earns anything. */
import { describe, expect, it } from 'vitest';
import type { Answer, Question, QuestionKind } from '../../shared/question.ts';
import { rightAnswer } from '../../src/questions/index.ts';
import { solve } from '../../src/solver/index.ts';
import { askQuestion, markAnswer } from '../support/in-english.ts';
import { freshQuestions } from './fresh.ts';

const COUNT = 100;

const statesOf = (question: Question): string[] => {
  const right = rightAnswer(question);
  return 'states' in right ? askQuestion(question).items.map(({ item }) => right.states[item]!) : [];
};

/** Always the same of the offered states. */
const stubborn = (question: Question, choice: 0 | 1): Answer =>
  ({
    kind: question.kind,
    states: Object.fromEntries(
      askQuestion(question).items.map(({ item, choices }) => [item, choices[choice]!]),
    ),
  }) as Answer;

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

const KINDS: readonly QuestionKind[] = ['lamp-states', 'still-live'];

describe.each(KINDS)('a hundred %s questions', (kind) => {
  const several = freshQuestions(kind, COUNT).filter((question) => askQuestion(question).items.length > 1);

  it('ask for as much in the one state as in the other, within a third', () => {
    const states = several.flatMap((question) =>
      askQuestion(question).items.map(({ item, choices }) => {
        const right = rightAnswer(question);
        return 'states' in right ? choices.indexOf(right.states[item]!) : -1;
      }),
    );
    const first = states.filter((state) => state === 0).length / states.length;
    expect(first).toBeGreaterThan(1 / 3);
    expect(first).toBeLessThan(2 / 3);
  });

  it('give hardly any marks to somebody who always says the same', () => {
    for (const choice of [0, 1] as const)
      expect(
        mean(several.map((question) => markAnswer(question, stubborn(question, choice)).share)),
      ).toBeLessThan(0.25);
  });

  it('mostly have not everything in one state', () => {
    const alike = several.filter((question) => new Set(statesOf(question)).size === 1).length;
    expect(alike / several.length).toBeLessThan(0.3);
  });
});

it('of two hundred lamp questions a few have everything in one state: if none had, it would be a pattern too', () => {
  const questions = freshQuestions('lamp-states', 200);
  const alike = questions.filter((question) => new Set(statesOf(question)).size === 1).length;
  expect(alike).toBeGreaterThan(0);
  expect(alike / questions.length).toBeLessThan(0.1);
});

describe('a hundred wiring questions', () => {
  const questions = freshQuestions('wiring', COUNT);

  it('have the right choice anywhere among the choices', () => {
    const places = questions.map((question) => {
      const right = rightAnswer(question);
      return right.kind === 'wiring' ? right.choice : undefined;
    });
    expect(new Set(places).size).toBeGreaterThanOrEqual(4);
  });

  it('offer a break and a make contact of two relays or three, all on poles that nothing is wired to', () => {
    const energised = { break: 0, make: 0 };
    for (const question of questions) {
      const right = rightAnswer(question);
      if (question.kind !== 'wiring' || right.kind !== 'wiring') throw new Error(question.kind);
      const { choices, circuit } = question;
      const relays = new Set(choices.map(([terminal]) => terminal.split(':')[0]));
      expect([2, 3]).toContain(relays.size);
      expect(choices).toHaveLength(2 * relays.size);
      const wired = new Set(
        circuit.paths.flatMap(({ steps }) =>
          steps.flatMap(({ device, enter, leave }) => [`${device}:${enter}`, `${device}:${leave}`]),
        ),
      );
      for (const terminal of choices.flat()) expect(wired).not.toContain(terminal);
      energised[isBreak(choices[right.choice!]!) ? 'break' : 'make']++;
    }
    expect(Math.min(energised.break, energised.make)).toBeGreaterThan(COUNT / 5);
  });

  it('want something that the drawing doesn’t do with both ends left loose', () => {
    for (const question of questions) {
      if (question.kind !== 'wiring') throw new Error(question.kind);
      const { circuit, scenario, wanted } = question;
      const done = wanted.every(({ acts, load, state }) => {
        const { lamps, inputs } = solve(circuit, { ...scenario, acts: [...acts] }).solution;
        return (lamps[load] ?? inputs[load]) === state;
      });
      expect(done, question.seed).toBe(false);
    }
  });
});

/** EN 50005: 1-2 is a break contact, and the break leg of a changeover. */
const isBreak = ([one, other]: readonly [string, string]): boolean =>
  [one.at(-1), other.at(-1)].sort().join() === '1,2';
