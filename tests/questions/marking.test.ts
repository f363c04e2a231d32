import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Answer,
  type AnswerOf,
  type Question,
  type QuestionKind,
  toldMark,
} from '../../shared/question.ts';
import { blankAnswer, rightAnswer, shareOf } from '../../src/questions/index.ts';
import type { Kind, Parts } from '../../src/questions/kind.ts';
import { markWith } from '../../src/questions/marking.ts';
import { kindOf } from '../../src/questions/registry.ts';
import { markAnswer } from '../support/in-english.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';
import { FIXED, INPUTS, LAMPS, LINE, LIVE, METER, RELAYS, STEPS, WIRING } from './fixed.ts';

const given = (question: Question, states: Record<string, string>) =>
  markAnswer(question, { kind: question.kind, states } as Answer);
const ideas = (question: Question, answer: Answer): string[] =>
  markAnswer(question, answer).misconceptions.map(({ id }) => id);

describe('the right answers of the questions written by hand', () => {
  it('are what anybody reads off the drawing', () => {
    expect(rightAnswer(LAMPS)).toMatchObject({ states: { '-H1': 'dark', '-H2': 'lit', '-H3': 'lit' } });
    expect(rightAnswer(INPUTS)).toMatchObject({ states: { '-A1:I1': '1', '-A1:I2': '1' } });
    expect(rightAnswer(RELAYS)).toMatchObject({ states: { '-K1': 'operated', '-K2': 'operated' } });
    expect(rightAnswer(STEPS)).toMatchObject({
      states: {
        '0 -H1': 'lit',
        '0 -K2': 'operated',
        '1 -H1': 'dark',
        '1 -K2': 'operated',
        '2 -H1': 'dark',
        '2 -K2': 'rest',
      },
    });
    expect(rightAnswer(METER)).toEqual({ kind: 'meter', volts: 24 });
    expect(rightAnswer(LIVE)).toMatchObject({
      states: { '-F1:1': 'live', '-F1:2': 'dead', '-F2:2': 'live', '-K1:24': 'dead' },
    });
    expect(rightAnswer(WIRING)).toEqual({ kind: 'wiring', choice: 2 });
  });
});

describe('part marks', () => {
  it('are right minus wrong, never below nothing; what is left out costs nothing', () => {
    const share = (states: Record<string, string>): number => given(LAMPS, states).share;
    expect(share({ '-H1': 'dark', '-H2': 'lit', '-H3': 'lit' })).toBe(1);
    expect(share({ '-H1': 'dark', '-H2': 'lit' })).toBeCloseTo(2 / 3);
    expect(share({ '-H1': 'dark', '-H2': 'lit', '-H3': 'dark' })).toBeCloseTo(1 / 3);
    expect(share({ '-H1': 'dark', '-H2': 'dark' })).toBe(0);
    expect(share({ '-H1': 'lit', '-H2': 'dark', '-H3': 'dark' })).toBe(0);
    expect(share({})).toBe(0);
  });

  it('take less for a wrong part with more to choose from', () => {
    const part = { item: 'x', right: { says: 'lit' } } as const;
    const right = { ...part, given: { says: 'lit' }, correct: true } as const;
    const wrong = { ...part, given: { says: 'dark' }, correct: false } as const;
    const of = (choices: number): number =>
      shareOf([
        { ...right, choices },
        { ...right, choices },
        { ...wrong, choices },
      ]);
    expect(of(2)).toBeCloseTo(1 / 3);
    expect(of(3)).toBeCloseTo(1.5 / 3);
    expect(of(5)).toBeCloseTo(1.75 / 3);
    expect(shareOf([])).toBe(0);
  });

  it('give nothing on average to somebody who guesses', () => {
    const all = [0, 1].flatMap((a) => [0, 1].map((b) => [a, b]));
    const raw = all.map(([a, b]) => Number(a) + Number(b) - (2 - Number(a) - Number(b)));
    expect(raw.reduce((sum, marks) => sum + marks, 0)).toBe(0);
    // The floor at nothing is a gift, and a small one: a quarter of a mark over two parts.
    const shares = all.map(([a, b]) =>
      shareOf(
        [a, b].map((right) => ({
          item: 'x',
          right: { says: 'lit' },
          given: { says: right ? 'lit' : 'dark' },
          correct: right === 1,
          choices: 2,
        })),
      ),
    );
    expect(shares.reduce((sum, share) => sum + share, 0) / 4).toBe(0.25);
  });

  it('accept a reading within its tolerance, and nothing for 0 V', () => {
    const volts = (reading: number | null): boolean =>
      markAnswer(METER, { kind: 'meter', volts: reading }).correct;
    expect([23, 24, 25].map(volts)).toEqual([true, true, true]);
    expect([22.9, 25.1, -24, 0].map(volts)).toEqual([false, false, false, false]);
    expect(volts(null)).toBe(false);
    const isolated: Question = { ...METER, points: ['A:L+', 'B:L-'] };
    expect(markAnswer(isolated, { kind: 'meter', volts: null }).correct).toBe(true);
    expect(markAnswer(isolated, { kind: 'meter', volts: 0 }).correct).toBe(true);
    expect(markAnswer(isolated, { kind: 'meter', volts: 24 }).correct).toBe(false);
  });

  it('take no notice of the sign of an alternating voltage', () => {
    const circuit = circuitOf(`
supply A 230 V AC
-H1 lamp
A:L -H1:X1-X2 A:N`);
    const question: Question = {
      kind: 'meter',
      circuit,
      scenario: scenarioOf(),
      family: 'fixed',
      points: ['A:N', 'A:L'],
      tolerance: 5,
    };
    expect(rightAnswer(question)).toEqual({ kind: 'meter', volts: 230 });
    expect(markAnswer(question, { kind: 'meter', volts: -230 }).correct).toBe(true);
  });
});

describe('what cannot be understood in an answer', () => {
  it('is reported and earns nothing, and the rest is marked', () => {
    const mark = given(LAMPS, { '-H1': 'dark', '-H2': 'purple', '-H9': 'lit', constructor: 'lit' });
    expect(mark.problems.map(({ code }) => code)).toEqual([
      'answer-impossible-state',
      'answer-unknown-item',
      'answer-unknown-item',
    ]);
    expect(mark.parts.map(({ correct }) => correct)).toEqual([true, false, false]);
    expect(mark.parts[1]).toMatchObject({ given: 'purple', right: 'lit' });
    expect(mark.share).toBe(0);
  });

  it('may be an answer to another kind of question', () => {
    const mark = markAnswer(LAMPS, { kind: 'meter', volts: 24 });
    expect(mark).toMatchObject({ share: 0, correct: false, misconceptions: [] });
    expect(mark.problems.map(({ code }) => code)).toEqual(['answer-other-kind']);
  });

  it('may be a choice that is not there, or no number', () => {
    expect(markAnswer(WIRING, { kind: 'wiring', choice: 7 }).problems.map(({ code }) => code)).toEqual([
      'answer-no-such-choice',
    ]);
    expect(markAnswer(METER, { kind: 'meter', volts: Number.NaN }).problems.map(({ code }) => code)).toEqual([
      'answer-not-a-number',
    ]);
  });

  it('never throws, whatever an answer holds, and the mark keeps its contract', () => {
    const key = fc.oneof(
      fc.constantFrom('-H1', '-H2', '-A1:I1', '0 -H1', '-K1', '-F1:1', '__proto__'),
      fc.string({ maxLength: 8 }),
    );
    const word = fc.oneof(
      fc.constantFrom('lit', 'dark', '1', '0', 'operated', 'rest', 'live', 'dead', ' LIT '),
      fc.string({ maxLength: 8 }),
    );
    const states = fc.array(fc.tuple(key, word), { maxLength: 8 }).map((list) => Object.fromEntries(list));
    const answer: fc.Arbitrary<Answer> = fc.oneof(
      fc
        .tuple(
          fc.constantFrom('lamp-states', 'input-states', 'relay-states', 'sequence', 'still-live'),
          states,
        )
        .map(([kind, given]) => ({ kind, states: given }) as Answer),
      fc.integer({ min: 0, max: 7 }).map((choice): Answer => ({ kind: 'wiring', choice })),
      fc.oneof(fc.double(), fc.constant(null)).map((volts): Answer => ({ kind: 'meter', volts })),
    );
    fc.assert(
      fc.property(fc.constantFrom(...FIXED), answer, (question, value) => {
        const mark = markAnswer(question, value);
        expect(toldMark.safeParse(mark).success).toBe(true);
        expect(mark.correct).toBe(mark.parts.every(({ correct }) => correct));
        if (mark.correct) expect(mark.share).toBe(1);
      }),
      { numRuns: 400 },
    );
  });
});

describe('a wrong answer that a misconception gives', () => {
  it('names it, with the idea and what to do instead', () => {
    const { misconceptions } = given(LAMPS, { '-H1': 'lit', '-H2': 'dark', '-H3': 'dark' });
    expect(misconceptions.map(({ id }) => id)).toEqual(['nothing-moves', 'make-for-break']);
    expect(misconceptions[0]!.idea).toMatch(/as they are drawn/);
    expect(misconceptions[0]!.advice).not.toBe('');
  });

  it('names none where none gives exactly this, where something is left out, or where it is right', () => {
    expect(given(LAMPS, { '-H1': 'dark', '-H2': 'dark', '-H3': 'lit' }).misconceptions).toEqual([]);
    expect(given(LAMPS, { '-H1': 'lit', '-H2': 'dark' }).misconceptions).toEqual([]);
    expect(markAnswer(LAMPS, rightAnswer(LAMPS)).misconceptions).toEqual([]);
    expect(markAnswer(LAMPS, blankAnswer(LAMPS)).misconceptions).toEqual([]);
  });

  it('is told from the readings of a meter, the choice of a wiring, the terminals that stay live', () => {
    const isolated: Question = { ...METER, points: ['A:L+', 'B:L-'] };
    expect(ideas(isolated, { kind: 'meter', volts: 24 })).toEqual(['common-reference']);
    // Of three choices one is chosen by a slip nearly as often.
    expect(ideas(WIRING, { kind: 'wiring', choice: 0 })).toEqual([]);
    const four = { ...WIRING, choices: [...WIRING.choices, ['-K1:14', '-K1:A1']] } as typeof WIRING;
    expect(ideas(four, { kind: 'wiring', choice: 0 })).toEqual(['make-for-break']);
    const more = { ...LIVE, asked: [...LIVE.asked, '-F2:1'] } as typeof LIVE;
    const right = rightAnswer(more) as { states: Record<string, string> };
    const told = (wrong: Record<string, string>) =>
      ideas(more, { kind: 'still-live', states: { ...right.states, ...wrong } } as Answer);
    expect(told({ '-F2:2': 'dead', '-F2:1': 'dead' })).toEqual(['one-supply']);
    // One terminal before the open place taken for dead may be a slip.
    expect(told({ '-F1:1': 'dead' })).toEqual([]);
  });

  it('is told from the states of a whole sequence', () => {
    const sealed = circuitOf(`
supply A 24 V AC
-S0 push-button break 21-22
-S1 push-button make 13-14
-K1 relay 2 poles
-H1 lamp
A:L -S0:21-22 -S1:13-14 -K1:A1-A2 A:N
-S0:22 -K1:11-14 -S1:14
-S0:22 -K1:21-24 -H1:X1-X2 A:N`);
    const question: Question = {
      kind: 'sequence',
      circuit: sealed,
      scenario: scenarioOf('press -S1; release -S1; press -S0'),
      family: 'fixed',
      asked: [1, 2, 3].flatMap((after) => ['-K1', '-H1'].map((item) => ({ after, item }))),
    };
    const states = { '1 -K1': 'operated', '1 -H1': 'lit', '3 -K1': 'rest', '3 -H1': 'dark' };
    expect(
      ideas(question, { kind: 'sequence', states: { ...states, '2 -K1': 'rest', '2 -H1': 'dark' } }),
    ).toEqual(['seal-forgotten']);
    // One wrong alone may be a slip.
    const slip = { ...states, '2 -K1': 'operated', '2 -H1': 'dark' } as const;
    expect(ideas(question, { kind: 'sequence', states: slip })).toEqual([]);
  });
});

it('marks without changing what it marks', () => {
  const frozen = JSON.stringify([LINE, FIXED]);
  for (const question of FIXED) markAnswer(question, blankAnswer(question));
  expect(JSON.stringify([LINE, FIXED])).toBe(frozen);
});

describe('a wrong idea that gives nearly the right answer', () => {
  /** Of a kind that takes a reading for right when it is at most one volt beside. */
  const near = {
    ...kindOf('meter'),
    parts: (_: unknown, { volts }: AnswerOf<'meter'>, { volts: wanted }: AnswerOf<'meter'>): Parts => ({
      parts: [
        {
          item: 'volts',
          given: { says: 'lit' },
          right: { says: 'lit' },
          correct: Math.abs(volts! - wanted!) <= 1,
          choices: 0,
        },
      ],
      problems: [],
    }),
  };
  let right: unknown;
  const marked = (ideal: number, volts: number) => {
    right = undefined;
    const kind: Kind<'meter'> = {
      ...near,
      answerBy: (_, solve) => {
        right ??= solve;
        return { kind: 'meter', volts: solve === right ? ideal : 10.9 };
      },
    };
    return markWith(kind as unknown as Kind<QuestionKind>, METER, { kind: 'meter', volts }).mark;
  };

  it('isn’t told from it by an answer a little further off', () => {
    expect(marked(10, 11.5)).toMatchObject({ correct: false, misconceptions: [] });
    expect(marked(9, 11.5).misconceptions.length).toBeGreaterThan(0);
    expect(marked(9, 9.5)).toMatchObject({ correct: true, misconceptions: [] });
  });
});
