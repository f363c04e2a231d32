import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Act } from '../../../shared/scenario.ts';
import { actSaid, readActs, writeActs } from '../../../src/circuit/index.ts';
import { VERBS } from '../../../src/circuit/notation/possible-acts.ts';
import { say } from '../../../src/words/index.ts';
import { english } from '../../support/in-english.ts';
import { circuitOf, oneLine, problemsOf, whole } from '../reading.ts';

const CIRCUIT = circuitOf(`supply A 24 V AC
-F1 fuse
-F2 overload "Conveyor"
-Q1 isolator
-S0 emergency-stop break
-S1 push-button make "Start"
-S3 selector Off/Hand/Auto make "Mode"
-B1 field-contact break "Fan tripped"
-K3 relay "Chain"
-A2 outputs 2 "Controller" "Start fan"
-H1 lamp
`);

/** Every act, and its words in a sentence. */
const ACTS: readonly (readonly [string, Act, string])[] = [
  ['press -S1', { kind: 'press', device: '-S1' }, 'press -S1 ("Start")'],
  ['release -S0', { kind: 'release', device: '-S0' }, 'unlatch -S0'],
  ['turn -S3 Auto', { kind: 'turn', device: '-S3', to: 'Auto' }, 'turn -S3 ("Mode") to Auto'],
  ['make -B1', { kind: 'make', device: '-B1' }, '-B1 ("Fan tripped") is no longer actuated'],
  ['break -B1', { kind: 'break', device: '-B1' }, '-B1 ("Fan tripped") is actuated'],
  ['open -F1', { kind: 'open', device: '-F1' }, 'take out the fuse -F1'],
  ['close -Q1', { kind: 'close', device: '-Q1' }, 'close -Q1'],
  ['trip -F2', { kind: 'trip', device: '-F2' }, 'trip -F2 ("Conveyor")'],
  ['reset -F2', { kind: 'reset', device: '-F2' }, 'reset -F2 ("Conveyor")'],
  ['on -A2:Q1', { kind: 'on', device: '-A2', point: 'Q1' }, 'switch the output -A2:Q1 ("Start fan") on'],
  ['off -A2:Q2', { kind: 'off', device: '-A2', point: 'Q2' }, 'switch the output -A2:Q2 off'],
  ['hold -K3', { kind: 'hold', device: '-K3' }, 'hold -K3 ("Chain") in by hand'],
  ['free -K3', { kind: 'free', device: '-K3' }, 'let go of -K3 ("Chain")'],
  ['fail A', { kind: 'fail', supply: 'A' }, 'let supply A (24 V AC) fail'],
  ['restore A', { kind: 'restore', supply: 'A' }, 'restore supply A (24 V AC)'],
  ['wait 5 s', { kind: 'wait', seconds: 5 }, 'wait 5 s'],
];

describe('acts', () => {
  it.each(ACTS)('%s', (text, act, words) => {
    expect(whole(readActs(text, CIRCUIT))).toEqual([act]);
    expect(whole(readActs(text))).toEqual([act]);
    expect(writeActs([act])).toBe(text);
    expect(say(english.acts, actSaid(act, CIRCUIT))).toBe(words);
  });

  it('are all in the table above', () => {
    expect(ACTS.map(([, { kind }]) => kind).toSorted()).toEqual([...VERBS].toSorted());
  });

  it('stand in order between semicolons or line ends', () => {
    const text = '; press -S1;release -S1 ;\n wait 500ms\r\nwait 2 min;;';
    expect(writeActs(whole(readActs(text, CIRCUIT)))).toBe('press -S1; release -S1; wait 0.5 s; wait 120 s');
    expect(whole(readActs(''))).toEqual([]);
  });

  it('read back as they are written', () => {
    const device = fc.constantFrom('-S1', '-K3', '-QA1234');
    const act = fc
      .constantFrom(...ACTS.map(([, each]) => each))
      .chain(
        (each): fc.Arbitrary<Act> =>
          each.kind === 'wait'
            ? fc.double({ min: 1e-7, max: 86_400, noNaN: true }).map((seconds) => ({ kind: 'wait', seconds }))
            : 'device' in each
              ? device.map((name) => ({ ...each, device: name }))
              : fc.constant(each),
      );
    fc.assert(
      fc.property(fc.array(act, { maxLength: 20 }), (acts) => {
        expect(whole(readActs(writeActs(acts)))).toEqual(acts);
      }),
    );
  });

  it('say times as they are read', () => {
    const words = [0.25, 1.5, 60, 90, 120].map((seconds) =>
      say(english.acts, actSaid({ kind: 'wait', seconds }, CIRCUIT)),
    );
    expect(words).toEqual(['wait 250 ms', 'wait 1.5 s', 'wait 1 min', 'wait 90 s', 'wait 2 min']);
  });
});

const REFUSED: readonly (readonly [string, string, string, string])[] = [
  ['pres -S1', '1:1 unknown-act', '"pres" is no act', 'Did you mean press?'],
  ['"press" -S1', '1:1 unknown-act', '"press" is no act', 'There are: press'],
  ['press', '1:6 bad-act', 'What is to be done', 'press -S1'],
  ['press S1', '1:7 bad-act', '"S1" is no reference designation', 'press -S1'],
  ['press -S1 -S0', '1:11 bad-act', '"-S0" is too much', 'semicolon'],
  ['press -S1; press -S9', '1:18 unknown-designation', 'no device -S9', 'Did you mean -S0?'],
  ['press -K3', '1:7 act-not-possible', 'it is a relay', 'hold -K3 or free -K3'],
  ['press -H1', '1:7 act-not-possible', 'it is a lamp', 'push-button or emergency-stop'],
  ['hold -S3', '1:6 act-not-possible', 'it is a selector', 'turn -S3 Auto'],
  ['make -A2', '1:6 act-not-possible', 'it is outputs', 'on -A2:Q1'],
  ['turn -S3', '1:9 bad-act', 'To which position', 'Off, Hand, Auto'],
  ['turn -S3 auto', '1:10 unknown-position', 'no position "auto"', 'Did you mean Auto?'],
  ['on -A2', '1:4 bad-act', 'Which output', 'on -A2:Q1'],
  ['on -A2:Q3', '1:4 unknown-terminal', 'no terminal Q3', 'COM, Q1, Q2'],
  ['on -A2:COM', '1:4 unknown-terminal', 'no terminal COM of that sort', 'COM, Q1, Q2'],
  ['on -K3:11', '1:4 act-not-possible', 'it is a relay', 'hold -K3'],
  ['fail', '1:5 bad-act', 'Which supply', 'fail A'],
  ['fail B', '1:6 unknown-supply', 'no supply B', 'the supply A'],
  ['wait', '1:5 bad-act', 'How long', 'wait 5 s'],
  ['wait 5 V', '1:6 bad-act', 'How long', 'ms, s or min'],
  ['wait 0 s', '1:1 out-of-range', 'more than 0', 'more than 0'],
  ['wait 2 s;\n wait 9999 min', '2:2 out-of-range', 'at most 86400', 'at most 86400'],
];

describe('an act that cannot be', () => {
  it.each(REFUSED)('%s', (text, place, message, hint) => {
    const problems = problemsOf(readActs(text, CIRCUIT));
    expect(problems.map(oneLine)).toEqual([place]);
    expect(problems[0]?.message).toContain(message);
    expect(problems[0]?.hint).toContain(hint);
  });

  it('is reported with all the others', () => {
    expect(problemsOf(readActs('pres -S1; press -S1; wait; fail Z', CIRCUIT)).map(oneLine)).toEqual([
      '1:1 unknown-act',
      '1:26 bad-act',
      '1:33 unknown-supply',
    ]);
  });

  it.each([['x'.repeat(20_001)], ['wait 1 s;'.repeat(201)]])(
    'is not looked for in too long a list',
    (text) => {
      expect(problemsOf(readActs(text)).map(oneLine)).toEqual(['1:1 too-large']);
    },
  );
});
