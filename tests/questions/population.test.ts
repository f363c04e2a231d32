/** Many questions together: no pattern of answers earns anything. */
import { describe, expect, it } from 'vitest';
import type { Answer, Question, QuestionKind } from '../../shared/question.ts';
import { rightAnswer } from '../../src/questions/index.ts';
import { askQuestion, markAnswer } from '../support/in-english.ts';
import { freshQuestions } from './fresh.ts';

const COUNT = 50;

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

describe.each(KINDS)('fifty %s questions', (kind) => {
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

  it('now and then have everything in one state, and mostly not', () => {
    const alike = several.filter((question) => new Set(statesOf(question)).size === 1).length;
    expect(alike).toBeGreaterThan(0);
    expect(alike / several.length).toBeLessThan(0.3);
  });
});

describe('fifty wiring questions', () => {
  const questions = freshQuestions('wiring', COUNT);

  it('have the right choice anywhere among the choices', () => {
    const places = questions.map((question) => {
      const right = rightAnswer(question);
      return right.kind === 'wiring' ? right.choice : undefined;
    });
    expect(new Set(places).size).toBeGreaterThanOrEqual(4);
  });

  it('offer the two legs of one pole with the common left off, which never is right', () => {
    const withLegs = questions.filter(
      (question) => question.kind === 'wiring' && question.choices.some(isLegs),
    );
    expect(withLegs.length).toBeGreaterThan(COUNT / 2);
    for (const question of withLegs) {
      const right = rightAnswer(question);
      if (question.kind === 'wiring' && right.kind === 'wiring')
        expect(isLegs(question.choices[right.choice!]!)).toBe(false);
    }
  });
});

/** EN 50005: 2 is the break leg and 4 the make leg of a changeover. */
const isLegs = ([one, other]: readonly [string, string]): boolean =>
  one.slice(0, -1) === other.slice(0, -1) && [one.at(-1), other.at(-1)].sort().join() === '2,4';
