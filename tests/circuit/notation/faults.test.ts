import { describe, expect, it } from 'vitest';
import type { Fault } from '../../../shared/scenario.ts';
import { fault as faultSchema } from '../../../shared/scenario.ts';
import { faultSaid, readFaults, writeFaults } from '../../../src/circuit/index.ts';
import { english } from '../../../src/words/en/core.ts';
import { say } from '../../../src/words/index.ts';
import { circuitOf, oneLine, problemsOf, whole } from '../reading.ts';

const CIRCUIT = circuitOf(`supply A 24 V AC
-F1 fuse "Control"
-Q1 breaker
-S1 push-button make
-K3 relay
-H2 lamp
-M1 motor 230 V
A:L -F1:1-2 -S1:13-14 -K3:A1-A2 A:N
-F1:2 -K3:11-14 -H2:X1-X2 A:N
-K3:12 -M1:U1
`);

const FAULTS: readonly (readonly [string, Fault, string])[] = [
  ['-K3:14 broken', { kind: 'loose', at: '-K3:14' }, 'the conductor at -K3:14 is off'],
  [
    '-H2:X2 A:N broken',
    { kind: 'cut', from: '-H2:X2', to: 'A:N' },
    'the wire between -H2:X2 and A:N is broken',
  ],
  ['-K3:11-14 welded', { kind: 'welded', from: '-K3:11', to: '-K3:14' }, 'the contact -K3:11-14 is welded'],
  [
    '-K3:11-14 dirty 500 ohm',
    { kind: 'dirty', from: '-K3:11', to: '-K3:14', ohms: 500 },
    'the contact -K3:11-14 is dirty (500 ohm)',
  ],
  ['-K3:A1-A2 open', { kind: 'open', from: '-K3:A1', to: '-K3:A2' }, '-K3:A1-A2 is open inside'],
  ['-K3:A1-A2 shorted', { kind: 'shorted', from: '-K3:A1', to: '-K3:A2' }, '-K3:A1-A2 is shorted'],
  ['-F1 blown', { kind: 'blown', device: '-F1' }, '-F1 ("Control") has blown'],
  [
    '-K3:12 -K3:14 crossed',
    { kind: 'crossed', one: '-K3:12', other: '-K3:14' },
    'the conductors on -K3:12 and -K3:14 are exchanged',
  ],
  ['-K3 stuck', { kind: 'stuck', device: '-K3' }, '-K3 is stuck at rest'],
];

describe('faults', () => {
  it.each(FAULTS)('%s', (text, fault, words) => {
    expect(whole(readFaults(text, CIRCUIT))).toEqual([fault]);
    expect(whole(readFaults(text))).toEqual([fault]);
    expect(writeFaults([fault])).toBe(text);
    expect(say(english.faults, faultSaid(fault, CIRCUIT))).toBe(words);
  });

  it('are all in the table above', () => {
    const kinds = faultSchema.options.map((option) => option.shape.kind.value);
    expect(FAULTS.map(([, { kind }]) => kind).toSorted()).toEqual(kinds.toSorted());
  });

  it('read back as they are written, all together', () => {
    const all = FAULTS.map(([, fault]) => fault);
    expect(whole(readFaults(writeFaults(all), CIRCUIT))).toEqual(all);
  });

  it('have 1000 ohm in a dirty contact where none are stated, and other units of it', () => {
    const text = '-K3:11-12 dirty; -K3:11-12 dirty 4.7 kohm; -K3:11-12 dirty 1Mohm';
    expect(whole(readFaults(text, CIRCUIT))).toMatchObject([{ ohms: 1000 }, { ohms: 4700 }, { ohms: 1e6 }]);
  });

  it('take the ends of a contact and of a wire in either order', () => {
    expect(whole(readFaults('-K3:14-11 welded; A:N -H2:X2 broken', CIRCUIT))).toHaveLength(2);
  });

  it('speak of a breaker as tripped', () => {
    expect(say(english.faults, faultSaid({ kind: 'blown', device: '-Q1' }, CIRCUIT))).toBe('-Q1 has tripped');
  });
});

const REFUSED: readonly (readonly [string, string, string, string])[] = [
  ['-K3:14', '1:7 unknown-fault', 'What is wrong there?', 'broken, welded, dirty'],
  ['-K3:14 brokn', '1:13 unknown-fault', 'What is wrong there?', 'Did you mean broken?'],
  ['broken', '1:1 bad-fault', "Nothing can't be broken", '-K3:14 broken'],
  ['-K3:11-14 broken', '1:1 bad-fault', '"-K3:11-14" can\'t be broken', '-H2:X2 A:N broken'],
  ['-K3:11-12-14 welded', '1:1 bad-fault', "can't be welded", '-K3:11-14 welded'],
  ['-K3:11 stuck', '1:1 bad-fault', "can't be stuck", '-K3 stuck'],
  ['-K3:12 crossed', '1:1 bad-fault', "can't be crossed", '-K3:12 -K3:14 crossed'],
  ['-K3:11-14 dirty 5 V', '1:1 bad-fault', "can't be dirty", 'dirty 500 ohm'],
  ['-K3:11-14 welded 5 ohm', '1:18 bad-fault', '"5" is too much', 'semicolon'],
  ['-K3:11-14 dirty 0 ohm', '1:1 out-of-range', 'resistance in ohms is more than 0', 'more than 0'],
  ['-K9:14 broken', '1:1 unknown-designation', 'no device -K9', 'Did you mean -K3?'],
  ['B:L broken', '1:1 unknown-supply', 'no supply B', 'the supply A'],
  ['A:L+ broken', '1:1 unknown-terminal', 'no terminal L+', 'L, N'],
  ['-K3:24 broken', '1:1 unknown-terminal', 'no terminal 24', 'A1, A2, 11, 12, 14'],
  ['-Q1:1 broken', '1:1 fault-not-possible', 'No conductor comes to -Q1:1', 'a path comes to'],
  ['-H2:X1 A:N broken', '1:1 fault-not-possible', 'No wire goes straight', 'a wire goes to -K3:14'],
  ['-Q1:1 A:N broken', '1:1 fault-not-possible', 'No wire goes straight', 'No conductor comes to -Q1:1'],
  ['-K3:A1-A2 welded', '1:1 fault-not-possible', 'no contact between A1 and A2', 'open or shorted'],
  ['-K3:12-14 dirty', '1:1 fault-not-possible', 'no contact between 12 and 14', '-K3:11-12, -K3:11-14'],
  ['-K3:11-14 open', '1:1 fault-not-possible', 'no coil or load between 11 and 14', 'welded or dirty'],
  ['-M1:U1-V1 open', '1:1 fault-not-possible', 'no coil or load between U1 and V1', 'none that can be named'],
  ['A:L-N shorted', '1:1 fault-not-possible', 'A has no coil or load', 'none'],
  ['-S1 blown', '1:1 fault-not-possible', "-S1 can't be blown: it is a push-button", '-F1, -Q1'],
  ['-H2 stuck', '1:1 fault-not-possible', "-H2 can't be stuck: it is a lamp", '-F1, -Q1, -S1, -K3'],
  ['-Z2 stuck', '1:1 unknown-designation', 'no device -Z2', '-F1'],
  ['-K3:14 -K3:14 crossed', '1:1 fault-not-possible', 'with another one', 'two terminals'],
  [
    '-K3:11 -K3:14 crossed; -K3:14 A:N crossed',
    '1:24 fault-not-possible',
    '-K3:14 are exchanged already',
    'once',
  ],
  [
    '-Q1:1 -Q1:2 crossed',
    '1:1 fault-not-possible',
    'No conductor comes to -Q1:1 or -Q1:2',
    'a path comes to',
  ],
];

describe('a fault that cannot be', () => {
  it.each(REFUSED)('%s', (text, place, message, hint) => {
    const problems = problemsOf(readFaults(text, CIRCUIT));
    expect(problems.map(oneLine)).toEqual([place]);
    expect(problems[0]?.message).toContain(message);
    expect(problems[0]?.hint).toContain(hint);
  });

  it('is not looked for in too long a list', () => {
    expect(problemsOf(readFaults('-K3 stuck;'.repeat(21))).map(oneLine)).toEqual(['1:1 too-large']);
  });
});
