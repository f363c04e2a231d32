/** An author's answer stands only when the solver says the same; where it doesn't, it says what and why. */
import { describe, expect, it } from 'vitest';
import { changedIn, expectMistake, expectMistakes, SAMPLE } from './sample.ts';

describe('an answer that the solver does not confirm', () => {
  it('is refused at the wrong part, with what is right and why', () => {
    const { message, hint } = expectMistake(
      'answer: -H1 dark, -H2 lit',
      'answer: -H1 dark, ¦-H2 dark',
      'bank-not-confirmed',
    );
    expect(message).toContain('"dark" for -H2');
    expect(message).toContain('it says "lit"');
    expect(hint).toContain('-K1:11-14');
  });

  it('has each wrong part told', () => {
    expectMistakes(
      changedIn([['answer: -H1 dark, -H2 lit', 'answer: ¦-H1 lit, ¦-H2 dark']]),
      'bank-not-confirmed',
      'bank-not-confirmed',
    );
  });

  it('is told by the moment in a sequence', () => {
    const { message } = expectMistake('-H1 dark after 1', '¦-H1 lit after 1', 'bank-not-confirmed');
    expect(message).toContain('-H1 after 1');
  });

  it('counts in what a drawing of the lesson shows', () => {
    const { message, hint } = expectMistake('shows: -K1 operated', 'shows: ¦-K1 rest', 'bank-not-confirmed');
    expect(message).toContain('"rest" for -K1: it says "operated"');
    expect(hint).toContain('-B1:13-14');
  });

  it.each([
    ['volts', 'meter', 'points: -K1:11 A:L-\nanswer: ¦12 V'],
    ['a relay', 'relay-states', 'asked: -K1\nanswer: ¦-K1 operated'],
    ['a live terminal', 'still-live', 'asked: -K1:12\nanswer: ¦-K1:12 dead'],
  ])('may be about %s', (_, kind, fields) => {
    const question = `\n\`\`\`question id=other skill=first-skill kind=${kind} circuit=fan\n${fields}\n\`\`\`\n`;
    expectMistakes(SAMPLE + question, 'bank-not-confirmed');
  });

  it('may be a choice of wires that does something else', () => {
    expectMistakes(
      `${SAMPLE}
\`\`\`question id=wires skill=first-skill kind=wiring
circuit:
  supply A 24 V DC
  -B1  field-contact make "Slide 1 open"
  -K1  relay
  -H1  lamp white "Slide 1 shut"
  A:L+  -B1:13-14  -K1:A1-A2  A:L-
  -H1:X1-X2  A:L-
ends: A:L+ -H1:X1
choices:
  -K1:11 -K1:14
  -K1:11 -K1:12
wanted:
  -H1 lit at first
  -H1 dark after make -B1
answer: ¦-K1:11 -K1:14
\`\`\`
`,
      'bank-not-confirmed',
    );
  });
});

describe('a question without one right answer', () => {
  it('is refused when it depends on which relay is faster', () => {
    const race = `
\`\`\`question id=race skill=first-skill kind=lamp-states
circuit:
  supply A 24 V DC
  -S1  push-button make black "Both"
  -K1  relay 2 poles
  -K2  relay 2 poles
  -H1  lamp white "First"
  A:L+  -S1:13-14  -K2:11-12  -K1:A1-A2  A:L-
  -S1:14  -K1:11-12  -K2:A1-A2  A:L-
  A:L+  -K1:21-24  -H1:X1-X2  A:L-
do: press -S1
asked: -H1
answer: -H1 lit
\`\`\`
`;
    expectMistakes(SAMPLE + race.replace('question id=race', '¦question id=race'), 'question-not-certain');
  });

  it('is refused when its choices of wires do the same', () => {
    const wires = `
\`\`\`¦question id=wires skill=first-skill kind=wiring
circuit:
  supply A 24 V DC
  -B1  field-contact make "Slide 1 open"
  -K1  relay 2 poles
  -H1  lamp white "Slide 1 open"
  A:L+  -B1:13-14  -K1:A1-A2  A:L-
  -H1:X1-X2  A:L-
ends: A:L+ -H1:X1
choices:
  -K1:11 -K1:14
  -K1:21 -K1:24
wanted:
  -H1 lit after make -B1
answer: -K1:11 -K1:14
\`\`\`
`;
    expectMistakes(SAMPLE + wires, 'question-choices');
  });
});
