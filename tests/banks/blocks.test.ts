/** Circuits, drawings and questions in blocks: what is read, and every mistake with its place. */
import { describe, expect, it } from 'vitest';
import type { Topic } from '../../shared/bank.ts';
import { readTopic } from '../../src/banks/index.ts';
import { told } from '../support/in-english.ts';
import { changed, changedIn, expectMistake, expectMistakes, problemsIn, SAMPLE, unmark } from './sample.ts';

function topicOf(text: string): Topic {
  const read = readTopic('sample.md', text);
  if (!read.ok)
    expect.fail(
      told(read.problems)
        .map(({ line, message }) => `${line}: ${message}`)
        .join('\n'),
    );
  return read.value;
}

/** The sample with another question after its own ones. */
const withQuestion = (question: string): string => `${SAMPLE}\n${question}\n`;

describe('blocks without a mistake', () => {
  const topic = topicOf(SAMPLE);

  it('become circuits, drawings and questions', () => {
    expect(topic.circuits.map(({ id, circuit }) => [id, circuit.title])).toEqual([
      ['fan', 'Nursery: vent fan 1'],
    ]);
    expect(
      topic.questions.map(({ id, skill, question: { kind, family } }) => [id, skill, kind, family]),
    ).toEqual([
      ['fan-runs', 'first-skill', 'lamp-states', 'fixed'],
      ['own-circuit', 'second-skill', 'sequence', 'fixed'],
    ]);
  });

  it('give a question its circuit from above, its scenario, its answer and its remark', () => {
    const [fan] = topic.questions;
    expect(fan).toEqual({
      id: 'fan-runs',
      skill: 'first-skill',
      because: 'The pole has moved.',
      question: {
        kind: 'lamp-states',
        family: 'fixed',
        circuit: topic.circuits[0]!.circuit,
        scenario: { start: 'live', faults: [], acts: [{ kind: 'make', device: '-B1' }] },
        asked: ['-H1', '-H2'],
      },
      answer: { kind: 'lamp-states', states: { '-H1': 'dark', '-H2': 'lit' } },
    });
  });

  it('stand in the lesson where they are written', () => {
    expect(
      topic.lesson.map(({ title, depth, parts }) => [title, depth, parts.map(({ kind }) => kind)]),
    ).toEqual([
      [null, 2, ['text']],
      ['The fan', 2, ['drawing', 'text', 'drawing']],
      ['Details', 3, ['text']],
      ['Questions', 2, ['question', 'question']],
    ]);
  });

  it('draw a circuit at rest where it is written, and after a scenario where a drawing says so', () => {
    const drawings = topic.lesson.flatMap(({ parts }) => parts).filter(({ kind }) => kind === 'drawing');
    expect(drawings).toEqual([
      { kind: 'drawing', circuit: 'fan', scenario: null },
      {
        kind: 'drawing',
        circuit: 'fan',
        scenario: { start: 'live', faults: [], acts: [{ kind: 'make', device: '-B1' }] },
      },
    ]);
  });

  it('may be fenced by tildes, indented a little, and have a longer fence', () => {
    const text = SAMPLE.replace('```circuit id=fan', '  ~~~~circuit id=fan').replace(
      '-K1:11-14  -H2:X1-X2  A:L-\n```',
      '-K1:11-14  -H2:X1-X2  A:L-\n~~~~',
    );
    expect(topicOf(text).circuits).toEqual(topic.circuits);
  });
});

describe('the first line of a block', () => {
  it.each([
    ['an unknown kind', '```drawing circuit=fan', '```¦drawin circuit=fan', 'bank-unknown-block'],
    ['a setting it has not got', '```drawing circuit=fan', '```drawing circuit=fan ¦size=2', 'bank-setting'],
    ['a setting twice', '```drawing circuit=fan', '```drawing circuit=fan ¦circuit=fan', 'bank-setting'],
    ['a setting without a value', '```drawing circuit=fan', '```drawing ¦circuit=', 'bank-setting'],
    ['no circuit', '```drawing circuit=fan', '```¦drawing', 'bank-missing-setting'],
    ['no skill', 'question id=fan-runs skill=first-skill', '¦question id=fan-runs', 'bank-missing-setting'],
    [
      'a circuit that is not there',
      '```drawing circuit=fan',
      '```drawing circuit=¦fun',
      'bank-unknown-circuit',
    ],
    ['a name with capitals', 'id=fan-runs', 'id=¦Fan', 'bank-value'],
    ['a name that is taken', 'id=own-circuit', 'id=¦fan-runs', 'bank-repeated-name'],
    ['an unknown skill', 'skill=second-skill', 'skill=¦secnd-skill', 'bank-unknown-skill'],
    ['an unknown kind of question', 'kind=sequence', 'kind=¦seqence', 'bank-value'],
  ])('with %s is refused there', (_, from, to, code) => {
    expectMistake(from, to, code);
  });

  it('with a name that two circuits have is refused at the second', () => {
    expectMistakes(`${SAMPLE}\n\`\`\`circuit id=¦fan\nsupply A 24 V DC\n\`\`\`\n`, 'bank-repeated-name');
  });

  it('without an end is refused', () => {
    expectMistakes(`${SAMPLE}\n¦\`\`\`circuit id=other\nsupply A 24 V DC\n`, 'bank-unclosed-block');
  });

  it('says what a slip of the pen may have meant', () => {
    const { hint } = expectMistake('```drawing circuit=fan', '```¦drawin circuit=fan', 'bank-unknown-block');
    expect(hint).toContain('Did you mean drawing?');
  });
});

describe('a circuit in a block', () => {
  it.each([
    ['an unknown device', '-K1  relay 2 poles', '-K1  ¦relais 2 poles', 'unknown-kind'],
    ['a terminal it has not got', '-K1:11-14  -H2:X1-X2', '-K1:11-14  ¦-H2:X1-X3', 'unknown-terminal'],
    [
      'a drawing rule broken',
      'A:L+  -B1:13-14  -K1:A1-A2  A:L-',
      'A:L+  ¦-K1:A1-A2  -B1:13-14  A:L-',
      'contact-on-return',
    ],
    [
      'a mistake in the circuit of a question',
      '  A:L  -S1:11-12  -H1:X1-X2  A:N',
      '  A:L  ¦-S1:11-13  -H1:X1-X2  A:N',
      'unknown-terminal',
    ],
    [
      'a drawing rule broken in a question',
      '  A:L  -S1:11-12  -H1:X1-X2  A:N',
      '  A:L  ¦-H1:X1-X2  -S1:11-12  A:N',
      'contact-on-return',
    ],
  ])('with %s has it told on the line of the file', (_, from, to, code) => {
    expectMistake(from, to, code);
  });

  const legsOnly = '-K1:12  -H1:X1-X2  A:L-\nA:L+  -K1:14';
  const onPurpose = changed('A:L+  -K1:11-12  -H1:X1-X2  A:L-\n-K1:11-14  -H2:X1-X2  A:L-', legsOnly)
    .replace('-H2  lamp green "Vent fan 1 running"\n', '')
    .replace('shows: -K1 operated, -H1 dark, -H2 lit', 'shows: -H1 dark')
    .replace('asked: -H1, -H2\nanswer: -H1 dark, -H2 lit', 'asked: -H1\nanswer: -H1 dark');

  it('may break a drawing rule on purpose when it says which and why', () => {
    const text = changed(
      '# Nursery: vent fan 1',
      'rules: off only-legs-wired because it is a mistake\n# Nursery',
      onPurpose,
    );
    expect(topicOf(text).circuits[0]!.circuit.paths).toHaveLength(3);
  });

  it('that breaks a rule says how it would be allowed', () => {
    const problems = expectMistakes(changed('-K1:12  -H1', '¦-K1:12  -H1', onPurpose), 'only-legs-wired');
    expect(problems[0]!.hint).toContain('rules: off only-legs-wired because');
  });

  it.each([
    ['no reason', 'rules: ¦off only-legs-wired'],
    ['no rule', 'rules: ¦off because it is a mistake'],
    ['an unknown rule', 'rules: ¦off only-leg-wired because it is a mistake'],
  ])('has to turn rules off properly: %s', (_, line) => {
    expectMistakes(changed('# Nursery: vent fan 1', line, onPurpose), 'bank-rules');
  });

  it('has to turn off only what it breaks', () => {
    expectMistake('# Nursery: vent fan 1', 'rules: ¦off wrong-voltage because it is a mistake', 'bank-rules');
  });
});

describe('the keys of a drawing or question', () => {
  it.each([
    ['an unknown key', [['because: The pole', '¦becaus: The pole']], 'bank-unknown-key'],
    [
      'a key twice',
      [['because: The pole has moved.', 'because: The pole.\n¦because: It.']],
      'bank-repeated-key',
    ],
    ['a line without a key', [['because: The pole has moved.', '¦The pole has moved.']], 'bank-field'],
    ['a line before the first key', [['do: make -B1\nasked', '¦ make -B1\nasked']], 'bank-field'],
    [
      'no answer',
      [
        ['answer: -H1 dark, -H2 lit\n', ''],
        ['question id=fan-runs', '¦question id=fan-runs'],
      ],
      'bank-missing-key',
    ],
    [
      'no circuit',
      [
        [' circuit=fan\ndo: make -B1\nasked', '\ndo: make -B1\nasked'],
        ['question id=fan-runs', '¦question id=fan-runs'],
      ],
      'bank-missing-key',
    ],
    [
      'a circuit of its own and one from above',
      [
        ['kind=sequence', 'kind=sequence circuit=fan'],
        ['circuit:\n', '¦circuit:\n'],
      ],
      'bank-repeated-key',
    ],
    ['an act that is none', [['do: make -B1\nasked', 'do: ¦mak -B1\nasked']], 'unknown-act'],
    ['an act that cannot be done', [['release -S1', 'turn ¦-S1 On']], 'act-not-possible'],
    ['a fault that is none', [['make -B1\nasked', 'make -B1\nfault: -K1 brokn¦\nasked']], 'unknown-fault'],
    ['a start that is none', [['make -B1\nasked', 'make -B1\nstart: ¦cold\nasked']], 'bank-value'],
  ] as const)('with %s are refused there', (_, changes, code) => {
    expectMistakes(changedIn(changes), code);
  });

  it('may have values that go on over indented lines', () => {
    const text = changed('do: press -S1; release -S1', 'do:\n  press -S1;\n  release -S1');
    expect(topicOf(text).questions[1]!.question.scenario.acts).toHaveLength(2);
    expectMistakes(changed('do: press -S1; release -S1', 'do:\n  press -S1;\n  ¦releas -S1'), 'unknown-act');
  });
});

describe('what is asked and answered', () => {
  it.each([
    ['a lamp that is not there', 'asked: -H1, -H2', 'asked: -H1, ¦-H3', 'bank-unknown-item'],
    ['a relay where lamps are asked', 'asked: -H1, -H2', 'asked: -H1, ¦-K1', 'bank-unknown-item'],
    ['the same twice', 'asked: -H1, -H2', 'asked: -H1, ¦-H1', 'bank-repeated-item'],
    ['nothing', 'asked: -H1, -H2', '¦asked:', 'bank-field'],
    [
      'an answer to something else',
      'answer: -H1 dark, -H2 lit',
      'answer: -H1 dark, ¦-H4 lit',
      'bank-unknown-item',
    ],
    [
      'a state that a lamp has not got',
      'answer: -H1 dark, -H2 lit',
      'answer: ¦-H1 off, -H2 lit',
      'bank-unknown-state',
    ],
    [
      'an answer without a state',
      'answer: -H1 dark, -H2 lit',
      'answer: -H1 dark, ¦-H2',
      'bank-unknown-state',
    ],
    ['an answer twice', 'answer: -H1 dark, -H2 lit', 'answer: -H1 dark, ¦-H1 dark', 'bank-repeated-item'],
    ['an answer left out', 'answer: -H1 dark, -H2 lit', '¦answer: -H1 dark', 'bank-missing-answer'],
    ['a moment after the last act', '  -H1 after 1', '  ¦-H1 after 3', 'bank-unknown-item'],
    ['no moment in a sequence', '  -H1 after 1', '  ¦-H1', 'bank-unknown-item'],
  ])('with %s is refused there', (_, from, to, code) => {
    expectMistake(from, to, code);
  });
});

const FAN = 'circuit=fan';

describe('the other kinds of question', () => {
  const relay = withQuestion(`\`\`\`question id=r skill=first-skill kind=relay-states ${FAN}
do: make -B1
asked: -K1
answer: -K1 operated
\`\`\``);
  const meter = withQuestion(`\`\`\`question id=m skill=first-skill kind=meter ${FAN}
points: -K1:11 A:L-
tolerance: 1 V
answer: 24 V
\`\`\``);
  const live = withQuestion(`\`\`\`question id=l skill=first-skill kind=still-live
circuit:
  supply A 24 V DC
  supply B 230 V AC
  -Q1  isolator
  -H1  lamp white 24 V DC "Control"
  -H2  lamp white 230 V AC "Bench light"
  A:L+  -Q1:1-2  -H1:X1-X2  A:L-
  B:L  -H2:X1-X2  B:N
do: open -Q1
asked: -Q1:1, -Q1:2, -H2:X1
answer: -Q1:1 live, -Q1:2 dead, -H2:X1 live
\`\`\``);
  const inputs = withQuestion(`\`\`\`question id=i skill=first-skill kind=input-states
circuit:
  supply A 24 V DC
  -S1  push-button make black "Call"
  -A1  inputs 1 24V-3 "Call"
  A:L+  -S1:13-14  -A1:I1-COM  A:L-
do: press -S1
asked: -A1:I1
answer: -A1:I1 1
\`\`\``);
  const wiring = withQuestion(`\`\`\`question id=w skill=first-skill kind=wiring
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
answer: -K1:11 -K1:12
\`\`\``);

  it.each([
    ['relay-states', relay, { kind: 'relay-states', states: { '-K1': 'operated' } }],
    ['meter', meter, { kind: 'meter', volts: 24 }],
    [
      'still-live',
      live,
      { kind: 'still-live', states: { '-Q1:1': 'live', '-Q1:2': 'dead', '-H2:X1': 'live' } },
    ],
    ['input-states', inputs, { kind: 'input-states', states: { '-A1:I1': '1' } }],
    ['wiring', wiring, { kind: 'wiring', choice: 1 }],
  ])('%s are read', (_, text, answer) => {
    expect(topicOf(text).questions.at(-1)!.answer).toEqual(answer);
  });

  it.each([
    ['three points', meter, 'points: -K1:11 A:L-', 'points: ¦-K1:11 A:L- A:L+', 'bank-field'],
    ['a point that is not there', meter, 'points: -K1:11 A:L-', 'points: ¦-K1:15 A:L-', 'bank-unknown-item'],
    ['no voltage', meter, 'answer: 24 V', 'answer: ¦twenty', 'bank-field'],
    ['a voltage without its unit', meter, 'answer: 24 V', 'answer: ¦24', 'bank-field'],
    ['a tolerance of nothing', meter, 'tolerance: 1 V', 'tolerance: ¦0 V', 'bank-field'],
    ['a terminal that is not there', live, 'asked: -Q1:1,', 'asked: ¦-Q1:7,', 'bank-unknown-item'],
    ['one choice', wiring, 'choices:\n  -K1:11 -K1:14\n', '¦choices:\n', 'bank-field'],
    ['a choice that is no pair', wiring, '  -K1:11 -K1:14\n', '  ¦-K1:11\n', 'bank-field'],
    ['a wish that says nothing', wiring, '-H1 lit at first', '¦-H1 lit', 'bank-field'],
    ['a wish for what is not there', wiring, '-H1 lit at first', '¦-H7 lit at first', 'bank-unknown-item'],
    ['a wish for no state', wiring, '-H1 lit at first', '¦-H1 on at first', 'bank-unknown-state'],
    ['an act that is none in a wish', wiring, 'after make -B1', 'after ¦mak -B1', 'unknown-act'],
    [
      'an answer that is no choice',
      wiring,
      'answer: -K1:11 -K1:12',
      'answer: ¦-K1:12 -K1:14',
      'bank-unknown-item',
    ],
  ])('with %s are refused there', (_, text, from, to, code) => {
    expectMistakes(changed(from, to, text), code);
  });

  it('a wiring question is held against the drawing rules as its answer wires it', () => {
    // Loose ends alone would break them: that is what is asked.
    expect(topicOf(wiring).questions).toHaveLength(3);
    const swapped = changed(
      '-B1:13-14  -K1:A1-A2  A:L-',
      '¦-K1:A1-A2  -B1:13-14  A:L-',
      wiring.replace(SAMPLE, ''),
    );
    expectMistakes(SAMPLE + swapped, 'contact-on-return');
  });
});

describe('limits of what the solver is asked', () => {
  it('a circuit has at most 120 devices', () => {
    const lamps = Array.from({ length: 121 }, (_, n) => `-H${n + 1} lamp white`).join('\n');
    expectMistakes(
      `${SAMPLE}\n\`\`\`circuit id=many\n¦supply A 24 V DC\n${lamps}\n\`\`\`\n`,
      'bank-too-large',
    );
  });

  it('at most 60 acts are done one after another', () => {
    const acts = Array<string>(61).fill('make -B1').join('; ');
    expectMistakes(changed('do: make -B1\nasked', `do: ¦${acts}\nasked`), 'bank-too-large');
  });

  it('what comes after very much that was not confirmed is left unconfirmed, and said to be', () => {
    const wrong = Array<string>(170)
      .fill('```drawing circuit=fan\ndo: make -B1\nshows: ¦-H1 lit\n```\n')
      .join('\n');
    const { text } = unmark(SAMPLE + wrong);
    const codes = problemsIn(readTopic('sample.md', text)).map(({ code }) => code);
    expect(new Set(codes)).toEqual(new Set(['bank-not-confirmed', 'bank-too-large']));
    expect(codes.indexOf('bank-too-large')).toBeGreaterThan(100);
  });
});
