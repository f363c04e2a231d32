/** Under which of the things asked each reason is told, with its moment where several are asked about. */
import { describe, expect, it } from 'vitest';
import { type Answer, type QuestionOf, questionKind } from '../../shared/question.ts';
import { randomOf } from '../../src/generator/index.ts';
import { blankAnswer, checkQuestion, rightAnswer } from '../../src/questions/index.ts';
import { atLeast, drawn } from '../support/drawn.ts';
import { markAnswer } from '../support/in-english.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';
import { freshQuestions } from './fresh.ts';

const KINDS = questionKind.options;

/** Ferry ramp: -K1 holds itself, -K2 follows it. */
const CHAIN = circuitOf(`
supply A 24 V DC
-S1 push-button make
-S2 push-button break
-K1 relay 2 poles
-K2 relay 2 poles
-H1 lamp
-H2 lamp
A:L+ -S2:11-12 -S1:13-14 -K1:A1-A2 A:L-
-S2:12 -K1:11-14 -S1:14
A:L+ -K1:21-24 -K2:A1-A2 A:L-
A:L+ -K2:11-14 -H1:X1-X2 A:L-
A:L+ -K1:21-22 -H2:X1-X2 A:L-`);

const sequence = (acts: string, ...asked: readonly string[]): QuestionOf<'sequence'> => ({
  kind: 'sequence',
  circuit: CHAIN,
  scenario: scenarioOf(acts),
  family: 'fixed',
  asked: asked.map((each) => ({ after: Number(each.split(' ')[0]), item: each.split(' ')[1]! })),
});

/** What decides, with the reasons under each, moved inwards; told to somebody who had some parts right. */
function told(question: QuestionOf<'sequence'>, ...right: readonly string[]): string[] {
  expect(checkQuestion(question)).toEqual([]);
  const all = rightAnswer(question) as Extract<Answer, { kind: 'sequence' }>;
  const states = Object.fromEntries(Object.entries(all.states).filter(([key]) => right.includes(key)));
  const answer: Answer = right.length > 0 ? { kind: 'sequence', states } : blankAnswer(question);
  return markAnswer(question, answer).explanation.decides.flatMap(({ text, behind }) => [
    text,
    ...behind.map((step) => `  ${step.text}`),
  ]);
}

const PRESSED = '(closed: -S1 is pressed)';
const K1_BY_BUTTON = `  -K1 has operated: its coil is fed from A:L+ through -S2:11-12 (closed: -S2 is not pressed) and -S1:13-14 ${PRESSED}, and back to A:L-.`;
const K1_BY_ITSELF =
  '  -K1 has operated: its coil is fed from A:L+ through -S2:11-12 (closed: -S2 is not pressed) and -K1:11-14 (its own contact), and back to A:L-.';
const K2_BY_K1 =
  'has operated: its coil is fed from A:L+ through -K1:21-24 (closed: -K1 has operated), and back to A:L-.';
const lit = (after: number): string =>
  `-H1, after ${after}, is lit: it is fed from A:L+ through -K2:11-14 (closed: -K2 has operated), and back to A:L-.`;
const dark = (after: number): string =>
  `-H1, after ${after}, is dark: -K2:11-14 is open because -K2 has not operated.`;

describe('reasons', () => {
  it('are told with all that lies between where only what is furthest back has changed; every moment is named', () => {
    expect(told(sequence('press -S1; release -S1', '1 -H1', '2 -H1'))).toEqual([
      lit(1),
      `  -K2 ${K2_BY_K1}`,
      K1_BY_BUTTON,
      lit(2),
      `  -K2 ${K2_BY_K1}`,
      K1_BY_ITSELF,
    ]);
  });

  it('of a relay that was asked about stand under that relay, not under what hangs on it', () => {
    expect(told(sequence('press -S1; release -S1', '1 -H1', '2 -H1', '2 -K2'))).toEqual([
      lit(1),
      `  -K2 ${K2_BY_K1}`,
      K1_BY_BUTTON,
      lit(2),
      `-K2, after 2, ${K2_BY_K1}`,
      K1_BY_ITSELF,
    ]);
  });

  it('stand under what was answered wrongly where that relay was answered rightly', () => {
    expect(told(sequence('press -S1; release -S1', '1 -H1', '2 -H1', '2 -K2'), '1 -H1', '2 -K2')).toEqual([
      '-H1, after 1, is lit, fed through -K2:11-14.',
      lit(2),
      `  -K2 ${K2_BY_K1}`,
      K1_BY_ITSELF,
      '-K2, after 2, has operated, fed through -K1:21-24.',
    ]);
  });

  it('are told again once something else has held meanwhile, and otherwise once', () => {
    const acts = 'press -S1; release -S1; press -S2; release -S2; press -S1; release -S1; wait 1 s';
    const texts = told(sequence(acts, '2 -H1', '4 -H1', '6 -H1', '7 -H1'));
    expect(texts).toEqual([
      lit(2),
      `  -K2 ${K2_BY_K1}`,
      K1_BY_ITSELF,
      dark(4),
      '  -K2 is at rest: -K1:21-24 is open because -K1 has not operated.',
      '  -K1 is at rest: -S1:13-14 is open because -S1 is not pressed, and -K1:11-14 is open because -K1 has not operated.',
      lit(6),
      `  -K2 ${K2_BY_K1}`,
      K1_BY_ITSELF,
      lit(7),
    ]);
  });

  it('are told to nobody who had it right', () => {
    const question = sequence('press -S1; release -S1', '1 -H1', '1 -H2', '2 -H1', '2 -H2');
    expect(told(question, '1 -H1', '1 -H2', '2 -H1', '2 -H2')).toEqual([
      '-H1, after 1, is lit, fed through -K2:11-14.',
      '-H2, after 1, is dark: -K1:21-22 is open.',
      '-H1, after 2, is lit, fed through -K2:11-14.',
      '-H2, after 2, is dark: -K1:21-22 is open.',
    ]);
  });

  const COUNT = drawn(24);

  it.each(KINDS)('hang on what they stand under, and right parts are told shortly: %s', (kind) => {
    let reasons = 0;
    for (const question of freshQuestions(kind, COUNT)) {
      const about = `${question.family}, seed "${question.seed}"`;
      const random = randomOf(about);
      const whole = markAnswer(question, blankAnswer(question));
      const right = rightAnswer(question);
      const some =
        'states' in right
          ? {
              ...right,
              states: Object.fromEntries(Object.entries(right.states).filter(() => random.chance(0.5))),
            }
          : right;
      const mark = markAnswer(question, some as Answer);
      const correct = new Set(mark.parts.flatMap((part) => (part.correct ? [part.item] : [])));
      mark.explanation.decides.forEach(({ item, text, behind }, index) => {
        const full = whole.explanation.decides[index]!.text;
        if (item !== undefined && correct.has(item)) {
          expect(behind, about).toEqual([]);
          expect(text.length, `${about}: ${text}`).toBeLessThanOrEqual(full.length);
        } else expect(text, about).toBe(full);
      });
      for (const { text, behind } of [...whole.explanation.decides, ...mark.explanation.decides]) {
        let above = text;
        for (const step of behind) {
          const [, relay] = /^(-K[0-9]+) (?:has|is|never)/.exec(step.text) ?? [];
          if (relay !== undefined) {
            reasons++;
            expect(above, `${about}: ${step.text}`).toMatch(new RegExp(`${relay}(?![0-9])`));
          }
          above += step.text;
        }
      }
    }
    expect(reasons).toBeGreaterThan(atLeast(COUNT / 3));
  });
});
