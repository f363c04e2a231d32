/** Marks as earlier versions kept them, in English, become the marks of today that the same answers get. */
import { describe, expect, it } from 'vitest';
import { type Answer, mark as markSchema, type Question } from '../../shared/question.ts';
import { lineOfToday, markOfToday, withMarkOfToday } from '../../src/practice/older-marks.ts';
import { blankAnswer, markAnswer, rightAnswer, tellIdea } from '../../src/questions/index.ts';
import { english } from '../../src/words/en/core.ts';
import { FIXED, LAMPS, METER, WIRING } from '../questions/fixed.ts';
import { freshQuestions } from '../questions/fresh.ts';
import { withOneWrongPart } from '../questions/wrong-answers.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import * as inEnglish from '../support/in-english.ts';

const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

/** What was kept of an answer before, and what is kept now. */
function bothOf(question: Question, answer: Answer): readonly [unknown, unknown] {
  const { mark } = markAnswer(question, answer);
  // As many ideas as gave the answer were told then.
  const misconceptions = mark.misconceptions.map((id) => tellIdea(english, id));
  const before = plain({ ...inEnglish.markAnswer(question, answer), misconceptions });
  return [markOfToday(before), plain(mark)];
}

const answersTo = (question: Question): Answer[] => [
  rightAnswer(question),
  blankAnswer(question),
  ...withOneWrongPart(question),
];

describe('a mark of an earlier version', () => {
  it.each(FIXED.map((question) => [question.kind, question] as const))('of %s is read', (_, question) => {
    for (const answer of answersTo(question)) {
      const [read, now] = bothOf(question, answer);
      expect(read).toEqual(now);
      expect(markSchema.parse(read)).toEqual(now);
    }
  });

  it.each(['meter', 'wiring', 'sequence'] as const)('of fresh %s questions is read', (kind) => {
    const questions = freshQuestions(kind, 6);
    expect(questions.length).toBeGreaterThan(2);
    for (const question of questions)
      for (const answer of answersTo(question)) {
        const [read, now] = bothOf(question, answer);
        expect(read).toEqual(now);
      }
  });

  it('keeps what could not be understood', () => {
    for (const [question, answer] of [
      [LAMPS, { kind: 'lamp-states', states: { '-H1': 'purple!', '-H2': 'lit' } }],
      [METER, { kind: 'meter', volts: Number.NaN }],
      [METER, { kind: 'meter', volts: null }],
      [METER, { kind: 'meter', volts: -12.5 }],
      [WIRING, { kind: 'wiring', choice: 7 }],
    ] as const) {
      const [read, now] = bothOf(question, answer);
      expect(read).toEqual(now);
    }
  });

  it('keeps a long word that is no state, whatever its letters', () => {
    const answer: Answer = { kind: 'lamp-states', states: { '-H1': 'lamp'.repeat(20), '-H2': 'lit' } };
    const [read, now] = bothOf(LAMPS, answer);
    expect(markSchema.parse(read)).toEqual(now);
  });

  it('is what it is where it is one of today, or none at all', () => {
    const { mark } = markAnswer(LAMPS, rightAnswer(LAMPS));
    for (const value of [mark, null, 3, 'mark', [], {}]) expect(markOfToday(value)).toBe(value);
    const record = answerWith({ id: 'a', at: MORNING });
    expect(withMarkOfToday(record)).toEqual(record);
    expect(
      withMarkOfToday({ mark: { explanation: [], problems: [], parts: 'x', misconceptions: null } }),
    ).toEqual({ mark: { parts: 'x', misconceptions: null } });
  });
});

it('an idea told in words becomes its name', () => {
  const line = {
    id: 'a',
    skill: 'changeover',
    circuit: 'c',
    at: MORNING,
    attempt: answerWith({ id: 'a', at: MORNING }).attempt,
    number: 1,
    correct: false,
  };
  const before = { id: 'make-for-break', idea: 'You read …', advice: 'Look …' } as never;
  expect(lineOfToday({ ...line, idea: before }).idea).toBe('make-for-break');
  expect(lineOfToday({ ...line, idea: 'make-for-break' }).idea).toBe('make-for-break');
  expect(lineOfToday({ ...line, idea: null }).idea).toBeNull();
});
