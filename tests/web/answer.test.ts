import { describe, expect, it } from 'vitest';
import type { Asked, Question } from '../../shared/question.ts';
import { blankAnswer, rightAnswer } from '../../src/questions/index.ts';
import { answerOf, NOTHING, voltsOf } from '../../src/web/question/answer.ts';
import { askQuestion } from '../support/in-english.ts';
import { ownBank } from '../support/own-bank.ts';

const questions: readonly Question[] = ownBank().topics.flatMap(({ questions: all }) =>
  all.map(({ question }) => question),
);

/** Chooses on the page what an answer says. */
function chosenFor(asked: Asked, question: Question): Map<string, string> {
  const answer = rightAnswer(question);
  if (answer.kind === 'meter')
    return new Map([['volts', answer.volts == null ? NOTHING : String(answer.volts).replace('.', ',')]]);
  if (answer.kind === 'wiring')
    return new Map([[asked.items[0]?.item ?? '', asked.items[0]?.values[answer.choice ?? -1] ?? '']]);
  return new Map(Object.entries(answer.states));
}

describe('what is chosen on the page', () => {
  it('becomes the right answer when the right things are chosen, for every kind of question', () => {
    const kinds = new Set<string>();
    for (const question of questions) {
      const asked = askQuestion(question);
      const answer = answerOf(question.kind, asked, chosenFor(asked, question));
      const right = rightAnswer(question);
      if (right.kind === 'meter' && right.volts != null && answer?.kind === 'meter')
        expect(answer.volts).toBeCloseTo(right.volts, 9);
      else expect(answer).toEqual(right);
      kinds.add(question.kind);
    }
    expect(kinds.size).toBeGreaterThan(3);
  });

  it('is no answer while something is missing', () => {
    for (const question of questions) {
      expect(answerOf(question.kind, askQuestion(question), new Map())).toBeUndefined();
      expect(blankAnswer(question).kind).toBe(question.kind);
    }
  });
});

describe('volts as people write them', () => {
  it.each([
    ['24', 24],
    ['23,5', 23.5],
    [' 11.9 V ', 11.9],
    ['230v', 230],
    ['0', 0],
    ['-12', -12],
  ])('reads %j', (text, volts) => expect(voltsOf(text)).toBe(volts));

  it.each(['', '  ', 'V', 'twelve', '1 2', 'Infinity', 'NaN', '1e999', '0x10', '--1'])(
    'does not take %j',
    (text) => expect(voltsOf(text)).toBeUndefined(),
  );
});
