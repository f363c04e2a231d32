import { describe, expect, it } from 'vitest';
import type { Question } from '../../shared/question.ts';
import { checkQuestion, rightAnswer, secondsExpected } from '../../src/questions/index.ts';
import { askQuestion } from '../support/in-english.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';
import { FIXED, INPUTS, LAMPS, LINE, LIVE, METER, STEPS, WIRING } from './fixed.ts';

const codes = (question: Question): string[] => checkQuestion(question).map(({ code }) => code);

describe('a question on a circuit that is not decided', () => {
  it('is refused: more relays lock each other out than there are orders to try', () => {
    const size = 24;
    const lines = Array.from({ length: size }, (_, index) => {
      const [next, one] = [1, 2].map((step) => ((index + step) % size) + 1);
      return `A:L+ -K${next}:11-12 -K${one}:21-22 -K${index + 1}:A1-A2 A:L-`;
    });
    const relays = lines.map((_, index) => `-K${index + 1} relay 3 poles`);
    const circuit = circuitOf(
      ['supply A 24 V DC', ...relays, '-H1 lamp', ...lines, 'A:L+ -K1:31-34 -H1:X1-X2 A:L-'].join('\n'),
    );
    expect(codes({ ...LAMPS, circuit, scenario: scenarioOf(), asked: ['-H1'] })).toEqual([
      'question-not-certain',
    ]);
  });
});

describe('a question in words', () => {
  it('says where it begins, what is wrong, what is done, and what to answer', () => {
    const asked = askQuestion({ ...LAMPS, scenario: scenarioOf('make -B1; fail B', '-K2 stuck') });
    expect(asked.situation).toEqual([
      'The drawing shows everything at rest.',
      'All supplies are on, and -F1 is closed.',
      'No field contact is actuated.',
      'There is a fault: -K2 is stuck at rest.',
      'Then this is done, one after the other:',
      '1. -B1 ("Bin 2 full") is actuated.',
      '2. Let supply B (24 V DC) fail.',
    ]);
    expect(asked.items[0]).toEqual({
      item: '-H1',
      label: '-H1 "Bin 2 not full"',
      named: { label: '-H1 "Bin 2 not full"', name: '-H1', text: 'Bin 2 not full' },
      choices: ['lit', 'dark', 'dim'],
      values: ['lit', 'dark', 'dim'],
      about: ['-H1'],
    });
  });

  it('says of a button whether it is still pressed when something is asked', () => {
    const circuit = circuitOf(`
supply A 24 V DC
-S0 emergency-stop break
-S1 push-button make
-S2 push-button make
-K1 relay
-H1 lamp
A:L+ -S0:11-12 -S1:13-14 -K1:A1-A2 A:L-
A:L+ -K1:11-14 -S2:13-14 -H1:X1-X2 A:L-`);
    const done = (question: Question): string[] =>
      askQuestion(question).situation.filter((sentence) => /[Pp]ress -|[Rr]elease -/.test(sentence));
    const lamp = (acts: string): Question => ({
      ...LAMPS,
      circuit,
      scenario: scenarioOf(acts),
      asked: ['-H1'],
    });
    expect(done(lamp('press -S1'))).toEqual(['Then this is done: press -S1 and keep it pressed.']);
    expect(done(lamp('press -S1; release -S1; press -S2; press -S1; release -S1'))).toEqual([
      '1. Press -S1.',
      '2. Release -S1.',
      '3. Press -S2 and keep it pressed.',
      '4. Press -S1.',
      '5. Release -S1.',
    ]);
    // Where something is asked after each act it is still pressed then; what stays in by itself is only pressed.
    const step: Question = {
      ...STEPS,
      circuit,
      scenario: scenarioOf('press -S1; release -S1; press -S0'),
      asked: [{ after: 1, item: '-H1' }],
    };
    expect(done(step)).toEqual(['1. Press -S1 and keep it pressed.', '2. Release -S1.', '3. Press -S0.']);
    const wanted = { acts: [...scenarioOf('press -S1').acts], load: '-H1', state: 'lit' as const };
    expect(askQuestion({ ...WIRING, circuit, wanted: [wanted] }).situation.at(-1)).toBe(
      '1. -H1 is lit after: press -S1 and keep it pressed.',
    );
  });

  it('says so when it begins dead', () => {
    expect(
      askQuestion({ ...LAMPS, scenario: scenarioOf('close -F1', '', 'dead') }).situation.slice(0, 2),
    ).toEqual([
      'The drawing shows everything at rest, and that is how it begins.',
      'All supplies are on, but -F1 is open.',
    ]);
  });

  it('has cautions where it touches measuring or isolating, and only there', () => {
    for (const question of FIXED) {
      const { cautions } = askQuestion(question);
      expect(cautions.length > 0, question.kind).toBe(
        ['meter', 'still-live', 'wiring'].includes(question.kind),
      );
    }
    const cautions = askQuestion(LIVE).cautions.join(' ');
    for (const said of [/isolate/, /lock off/, /prove/, /another supply stay live/, /local code/, /licensed/])
      expect(cautions).toMatch(said);
  });

  it('offers the same answers whatever is right', () => {
    const scenarios = ['', 'make -B1', 'break -B2', 'make -B1; break -B2', 'fail A', 'open -F1'].map((acts) =>
      scenarioOf(acts),
    );
    for (const question of [LAMPS, INPUTS] as const) {
      const all = scenarios.map((scenario) => ({ ...question, scenario }));
      const { title, task, items, how, cautions } = askQuestion(all[0]!);
      for (const other of all)
        expect(askQuestion(other)).toMatchObject({ title, task, items, how, cautions });
      expect(new Set(all.map((each) => JSON.stringify(rightAnswer(each)))).size).toBeGreaterThan(3);
    }
  });

  it('names the step beside each item of a sequence', () => {
    expect(
      askQuestion(STEPS)
        .items.map(({ item, label, moment, named }) => [item, label, moment, named?.label])
        .slice(1, 3),
    ).toEqual([
      ['0 -K2', 'at the start: -K2', 'at the start', '-K2'],
      [
        '1 -H1',
        'after 1 (-B1 ("Bin 2 full") is actuated): -H1 "Bin 2 not full"',
        'after 1 (-B1 ("Bin 2 full") is actuated)',
        '-H1 "Bin 2 not full"',
      ],
    ]);
  });

  it('says what is wanted of a wiring, and asks for volts at a meter', () => {
    expect(askQuestion(WIRING).situation.slice(-4)).toEqual([
      'Two conductors are not connected yet: the one from -F1:2 and the one to -H1:X1.',
      'This is wanted:',
      '1. -H1 "Bin 2 not full" is lit at the start.',
      '2. -H1 "Bin 2 not full" is dark after: -B1 ("Bin 2 full") is actuated.',
    ]);
    expect(askQuestion(METER).items).toEqual([
      {
        item: 'volts',
        label: '-K1:11 against -K1:12',
        choices: [],
        values: [],
        unit: 'V',
        about: ['-K1:11', '-K1:12'],
      },
    ]);
  });

  it('offers what flashes only where there is a flasher, and half a voltage only where there can be one', () => {
    const choices = (text: string): string[] => {
      const circuit = circuitOf(text);
      return askQuestion({
        kind: 'lamp-states',
        circuit,
        scenario: scenarioOf(),
        family: 'fixed',
        asked: ['-H1'],
      }).items[0]!.choices;
    };
    const plain = 'supply A 24 V DC\n-S1 push-button make\n-H1 lamp\n-H2 lamp\n';
    expect(choices(`${plain}A:L+ -S1:13-14 -H1:X1-X2 A:L-\n-S1:14 -H2:X1-X2 A:L-`)).toEqual(['lit', 'dark']);
    expect(choices(`${plain}A:L+ -S1:13-14 -H1:X1-X2 -H2:X1-X2 A:L-`)).toEqual(['lit', 'dark', 'dim']);
    expect(
      choices(
        `${plain}-K5 flasher 1 s on 1 s off\nA:L+ -H1:X1-X2 A:L-\nA:L+ -H2:X1-X2 A:L-\nA:L+ -K5:A1-A2 A:L-`,
      ),
    ).toEqual(['lit', 'dark', 'flashing']);
  });

  it('is expected to take longer the more there is to it', () => {
    expect(secondsExpected(LAMPS)).toBeGreaterThan(secondsExpected({ ...LAMPS, asked: ['-H1'] }));
    expect(secondsExpected(LAMPS)).toBeGreaterThan(secondsExpected({ ...LAMPS, scenario: scenarioOf() }));
    expect(secondsExpected(WIRING)).toBeGreaterThan(secondsExpected(LAMPS));
  });
});

describe('the check of a question', () => {
  it('finds nothing wrong with those written by hand', () => {
    for (const question of FIXED) expect(codes(question), question.kind).toEqual([]);
  });

  it('finds what the circuit has not got', () => {
    expect(codes({ ...LAMPS, asked: ['-H1', '-H9'] })).toEqual(['question-unknown-item']);
    expect(codes({ ...LAMPS, asked: ['-F1'] })).toEqual(['question-unknown-item']);
    expect(codes({ ...INPUTS, asked: ['-A1:I3'] })).toEqual(['question-unknown-item']);
    expect(codes({ ...METER, points: ['-K1:11', '-K9:12'] })).toEqual(['question-unknown-item']);
    expect(codes({ ...LIVE, asked: ['-F1:9'] })).toEqual(['question-unknown-item']);
    expect(codes({ ...WIRING, ends: ['-F1:2', '-H9:X1'] })).toEqual(['question-unknown-item']);
    expect(codes({ ...WIRING, wanted: [{ acts: [], load: '-H9', state: 'lit' }] })).toEqual([
      'question-unknown-item',
    ]);
  });

  it('finds what is asked twice, or after more acts than there are', () => {
    expect(codes({ ...LAMPS, asked: ['-H1', '-H1'] })).toEqual(['question-asked-twice']);
    expect(codes({ ...METER, points: ['-K1:11', '-K1:11'] })).toEqual(['question-asked-twice']);
    expect(codes({ ...STEPS, asked: [{ after: 3, item: '-H1' }] })).toEqual(['question-no-such-step']);
  });

  it('finds a race and a relay that breaks its own coil', () => {
    const race = circuitOf(`
supply A 24 V DC
-B1 field-contact make
-K1 relay
-K2 relay
-H1 lamp
A:L+ -B1:13-14 -K2:11-12 -K1:A1-A2 A:L-
-B1:14 -K1:11-12 -K2:A1-A2 A:L-
A:L+ -H1:X1-X2 A:L-`);
    const buzzer = circuitOf(`
supply A 24 V DC
-B1 field-contact make
-K1 relay
-H1 lamp
A:L+ -B1:13-14 -K1:11-12 -K1:A1-A2 A:L-
A:L+ -H1:X1-X2 A:L-`);
    for (const circuit of [race, buzzer])
      expect(
        codes({
          kind: 'lamp-states',
          circuit,
          scenario: scenarioOf('make -B1'),
          family: 'fixed',
          asked: ['-H1'],
        }),
      ).toEqual(['question-not-certain']);
  });

  it('finds choices of which none or several do what is wanted', () => {
    expect(codes({ ...WIRING, choices: WIRING.choices.slice(0, 2) })).toEqual(['question-choices']);
    expect(codes({ ...WIRING, wanted: [{ acts: [], load: '-H3', state: 'lit' }] })).toEqual([
      'question-choices',
    ]);
  });

  it('finds a terminal with a part of its voltage', () => {
    const circuit = circuitOf(`
supply A 24 V DC
-H1 lamp 2 W
-H2 lamp 40 W
A:L+ -H1:X1-X2 -H2:X1-X2 A:L-`);
    expect(
      codes({ kind: 'still-live', circuit, scenario: scenarioOf(), family: 'fixed', asked: ['-H1:X2'] }),
    ).toEqual(['question-between']);
  });

  it('finds a state that is not offered: a lamp on the wrong supply', () => {
    const circuit = circuitOf(`
supply A 24 V DC
supply B 12 V DC
-H1 lamp 24 V DC
-H2 lamp 24 V DC
A:L+ -H1:X1-X2 A:L-
B:L+ -H2:X1-X2 B:L-`);
    expect(
      codes({ kind: 'lamp-states', circuit, scenario: scenarioOf(), family: 'fixed', asked: ['-H1', '-H2'] }),
    ).toEqual(['question-not-offered']);
  });
});

it('asks about a circuit that it leaves as it is', () => {
  const before = JSON.stringify(LINE);
  for (const question of FIXED) askQuestion(question);
  expect(JSON.stringify(LINE)).toBe(before);
});
