import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Answer, answer as answerSchema, type Question } from '../../shared/question.ts';
import { QUESTION_CODES, STATES } from '../../src/questions/index.ts';
import { readAnswer, told } from '../support/in-english.ts';
import { circuitOf } from '../support/written.ts';
import { FIXED, INPUTS, LAMPS, LIVE, METER, RELAYS, STEPS, WIRING } from './fixed.ts';

const states = (question: Question, text: string): Record<string, string> => {
  const read = readAnswer(question, text);
  if (!read.ok)
    throw new Error(
      `${text}: ${told(read.problems)
        .map(({ message }) => message)
        .join(' ')}`,
    );
  return 'states' in read.value ? read.value.states : {};
};
const codes = (question: Question, text: string): string[] => {
  const read = readAnswer(question, text);
  return read.ok ? [] : read.problems.map(({ code }) => code);
};

const RIGHT = { '-H1': 'dark', '-H2': 'lit', '-H3': 'lit' };

describe('a typed answer about states', () => {
  it.each([
    '-H1 dark, -H2 lit, -H3 lit',
    'H1 dark H2 lit H3 lit',
    'h1=off; h2=on; h3=on',
    'H1: dark, H2: lit, H3: lit',
    'H1 is dark and H2 and H3 are lit',
    'H2 H3 lit, H1 dark',
    'lit: H2 H3',
    'lit H2, H3',
    'lit:H2,H3',
    'dark: H1',
    'lit: H2 H3; dark: H1',
    'H2 H3',
    'H3, H2',
    '0 1 1',
    '011',
    'dark lit lit',
    'no yes yes',
  ])('is understood as it is written: %s', (text) => {
    expect(states(LAMPS, text)).toEqual(RIGHT);
  });

  it.each([
    ['none', 'dark'],
    ['None.', 'dark'],
    ['none lit', 'dark'],
    ['lit: none', 'dark'],
    ['none dark', 'lit'],
    ['all', 'lit'],
    ['all dark', 'dark'],
    ['lit: all', 'lit'],
    ['dark all', 'dark'],
  ])('may be one word for all of them: %s', (text, state) => {
    expect(states(LAMPS, text)).toEqual({ '-H1': state, '-H2': state, '-H3': state });
  });

  it('may leave some out', () => {
    expect(states(LAMPS, 'H1 dark')).toEqual({ '-H1': 'dark' });
    expect(states(LAMPS, '0 ? 1')).toEqual({ '-H1': 'dark', '-H3': 'lit' });
    expect(states(LAMPS, 'H1 ?, H2 lit')).toEqual({ '-H2': 'lit' });
  });

  it('of a list leaves the others out where they may stand in more than one way', () => {
    expect(states(LAMPS, 'lit: H2; dark: H1')).toEqual({ '-H1': 'dark', '-H2': 'lit' });
    const flashing: Question = {
      ...LAMPS,
      circuit: circuitOf(`
supply A 24 V DC
-B1 field-contact make
-K5 flasher 0.5 s on 1 s off
-H1 lamp
-H2 lamp
A:L+ -B1:13-14 -K5:A1-A2 A:L-
A:L+ -K5:15-18 -H1:X1-X2 A:L-
-B1:14 -H2:X1-X2 A:L-`),
      asked: ['-H1', '-H2'],
    };
    expect(states(flashing, 'flashing: H1')).toEqual({ '-H1': 'flashing' });
    expect(states(flashing, 'lit: H1')).toEqual({ '-H1': 'lit', '-H2': 'dark' });
    expect(states(flashing, 'dark: H1')).toEqual({ '-H1': 'dark', '-H2': 'lit' });
  });

  it('says at most twenty things that are wrong', () => {
    const read = readAnswer(LAMPS, Array.from({ length: 30 }, (_, at) => `X${at} lit`).join(', '));
    expect(read.ok ? 0 : read.problems.length).toBe(20);
  });

  it('has words of its own for inputs, relays and terminals', () => {
    expect(states(INPUTS, 'I1 1, I2 0')).toEqual({ '-A1:I1': '1', '-A1:I2': '0' });
    expect(states(INPUTS, 'A1:I1 high; A1:I2 low')).toEqual({ '-A1:I1': '1', '-A1:I2': '0' });
    expect(states(INPUTS, '1: I1')).toEqual({ '-A1:I1': '1', '-A1:I2': '0' });
    expect(states(RELAYS, 'K1 energised, K2 released')).toEqual({ '-K1': 'operated', '-K2': 'rest' });
    expect(states(RELAYS, 'operated: K1')).toEqual({ '-K1': 'operated', '-K2': 'rest' });
    expect(states(LIVE, '-F1:1 live, F1:2 dead, F2:2 live, K1:24 dead')).toEqual({
      '-F1:1': 'live',
      '-F1:2': 'dead',
      '-F2:2': 'live',
      '-K1:24': 'dead',
    });
    expect(states(LIVE, 'F1:1 and F2:2')).toEqual({
      '-F1:1': 'live',
      '-F1:2': 'dead',
      '-F2:2': 'live',
      '-K1:24': 'dead',
    });
  });

  it('goes step by step in a sequence', () => {
    const all = {
      '0 -H1': 'lit',
      '0 -K2': 'operated',
      '1 -H1': 'dark',
      '1 -K2': 'operated',
      '2 -H1': 'dark',
      '2 -K2': 'rest',
    };
    expect(
      states(STEPS, 'start: H1 lit, K2 operated; after 1: H1 dark, K2 operated; after 2: H1 dark, K2 rest'),
    ).toEqual(all);
    expect(states(STEPS, '0: H1 lit K2 operated 1: H1 dark K2 operated 2: H1 dark K2 rest')).toEqual(all);
    expect(states(STEPS, 'at the start 1 1, after 1: 0 1, after 2 0 0')).toEqual(all);
    expect(states(STEPS, '1 1 0 1 0 0')).toEqual(all);
    expect(states(STEPS, 'after 1: K2')).toEqual({ '1 -H1': 'dark', '1 -K2': 'operated' });
  });

  it.each([
    ['', 'answer-missing'],
    ['  ;,  ', 'answer-missing'],
    ['H9 lit', 'answer-unknown-item'],
    ['H1 purple', 'answer-unknown-item'],
    ['H1 lit, H1 dark', 'answer-twice'],
    ['1 0', 'answer-count'],
    ['1 0 1 1', 'answer-count'],
    ['H1 lit H2', 'answer-without-state'],
    ['hello there', 'answer-unknown-item'],
    ['constructor lit', 'answer-unknown-item'],
  ])('is refused with a reason: %s', (text, code) => {
    expect(codes(LAMPS, text)).toContain(code);
  });

  it('is refused where it could mean several things', () => {
    expect(codes(STEPS, 'H1 lit')).toContain('answer-ambiguous');
    expect(codes(STEPS, 'after 7: H1 lit')).toContain('answer-unknown-item');
  });

  it('names the step after which something isn’t asked, and none where none was named', () => {
    const messages = (question: Question, text: string): string[] => {
      const read = readAnswer(question, text);
      return read.ok ? [] : told(read.problems).map(({ message }) => message);
    };
    expect(messages(STEPS, 'after 7: H1 lit').join()).toContain('after 7');
    expect(messages(LAMPS, 'H9 lit').join()).not.toContain('after');
  });

  it('says everything that is wrong at once, each with what would be right', () => {
    const read = readAnswer(LAMPS, 'H8 lit, H9 dark');
    expect(read).toMatchObject({ ok: false });
    if (!read.ok) {
      expect(read.problems).toHaveLength(2);
      for (const { hint } of told(read.problems)) expect(hint).toBe('Asked is: -H1 -H2 -H3.');
    }
  });
});

describe('a typed reading', () => {
  it.each([
    ['24', 24],
    ['24 V', 24],
    ['24v', 24],
    ['+24 volts', 24],
    ['-24 V DC', -24],
    ['−24', -24],
    ['24,5', 24.5],
    ['3300 mV', 3.3],
    ['0.23 kV', 230],
    ['about 12 V', 12],
    ['0', 0],
  ])('is a number of volts: %s', (text, volts) => {
    expect(readAnswer(METER, text)).toEqual({ ok: true, value: { kind: 'meter', volts } });
  });

  it.each(['nothing', 'None', 'no reading', 'floating', '-'])('may be nothing: %s', (text) => {
    expect(readAnswer(METER, text)).toEqual({ ok: true, value: { kind: 'meter', volts: null } });
  });

  it.each([
    ['', 'answer-missing'],
    ['12 or 24', 'answer-not-a-number'],
    ['a lot', 'answer-not-a-number'],
    ['1e400', 'answer-not-a-number'],
    ['24 A', 'answer-not-a-number'],
  ])('is refused with a reason: "%s"', (text, code) => {
    expect(codes(METER, text)).toEqual([code]);
  });
});

describe('a typed choice', () => {
  it.each([
    '3',
    'c',
    'C',
    '3.',
    'choice 3',
    '-K1:11 and -K1:12',
    'K1:11 K1:12',
    '11-12',
    '11 and 12',
    'K1 11-12',
  ])('is a number, a letter or the terminals: %s', (text) => {
    expect(readAnswer(WIRING, text)).toEqual({ ok: true, value: { kind: 'wiring', choice: 2 } });
  });

  it.each([
    ['', 'answer-missing'],
    ['0', 'answer-no-such-choice'],
    ['4', 'answer-no-such-choice'],
    ['11', 'answer-no-such-choice'],
    ['the first', 'answer-no-such-choice'],
  ])('is refused with a reason: "%s"', (text, code) => {
    expect(codes(WIRING, text)).toEqual([code]);
  });
});

describe('any text at all', () => {
  const words = fc.oneof(
    fc.constantFrom(
      ...FIXED.flatMap((question) => ('asked' in question ? question.asked.map(String) : [])),
      ...Object.values(STATES).flat(),
      ...[
        'lit:',
        'after',
        '1:',
        'start',
        'none',
        'all',
        'H1',
        'K1',
        '?',
        '-',
        ',',
        ';',
        '=',
        ':',
        '24',
        'V',
        '__proto__',
      ],
    ),
    fc.string({ unit: 'binary', maxLength: 12 }),
  );
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 80 }),
    fc.array(words, { maxLength: 12 }).map((list) => list.join(' ')),
  );

  it('is either read as an answer or refused with known codes and words, for every kind', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FIXED), text, (question, written) => {
        const read = readAnswer(question, written);
        if (read.ok) {
          const value: Answer = read.value;
          expect(answerSchema.parse(JSON.parse(JSON.stringify(value)))).toEqual(value);
          expect(value.kind).toBe(question.kind);
          return;
        }
        expect(read.problems.length).toBeGreaterThan(0);
        for (const { code, message, hint } of told(read.problems)) {
          expect(QUESTION_CODES).toContain(code);
          expect(message).not.toBe('');
          expect(hint).not.toBe('');
          expect(message).not.toMatch(/\p{Cc}/u);
        }
      }),
      { numRuns: 4000 },
    );
  });
});
