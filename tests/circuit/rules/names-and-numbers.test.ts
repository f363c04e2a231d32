import { describe, expect, it } from 'vitest';
import { designationTwice } from '../../../src/circuit/rules/designation-twice.ts';
import { terminalNotThere } from '../../../src/circuit/rules/terminal-not-there.ts';
import { terminalNumber } from '../../../src/circuit/rules/terminal-number.ts';
import { circuitOf } from '../reading.ts';
import { judged, judgedData } from './judging.ts';

const CIRCUIT = circuitOf('supply A 24 V AC\n-K1 relay\n-H1 lamp\nA:L  -K1:11-14  -H1:X1-X2  A:N');

describe('a designation names one thing', () => {
  it('finds a device and a supply whose name is taken', () => {
    const { supplies, devices } = CIRCUIT;
    const twice = { ...CIRCUIT, supplies: [...supplies, ...supplies], devices: [...devices, devices[0]!] };
    expect(judgedData(designationTwice, twice)).toEqual([
      'There are two supplies A.',
      'The designation -K1 is used twice.',
    ]);
    expect(judgedData(designationTwice, CIRCUIT)).toEqual([]);
  });
});

describe('a path comes to terminals that are there', () => {
  it('finds one that the device hasn’t got, and a device that the circuit hasn’t got', () => {
    const steps = [
      { device: 'A', enter: 'L+' },
      { device: '-K1', enter: '31', leave: '34' },
      { device: '-K9', enter: '11' },
    ];
    expect(judgedData(terminalNotThere, { ...CIRCUIT, paths: [{ sheet: 1, steps }] })).toEqual([
      'A has no terminal L+.',
      '-K1 has no terminal 31.',
      '-K1 has no terminal 34.',
      "A path comes to -K9, and the circuit hasn't got it.",
    ]);
    expect(judgedData(terminalNotThere, CIRCUIT)).toEqual([]);
  });
});

describe('contacts have the numbers of EN 50005', () => {
  it('finds numbers that belong to no such contact', () => {
    expect(judged(terminalNumber, 'supply A 24 V AC\n-S1 push-button make 13-15')).toEqual([
      [
        "2:17 The make contact 13-15 of -S1 has numbers that EN 50005 doesn't give it.",
        'All begin with the same sequence digit and end with 3 and 4 (delayed: 7 and 8): 13-14.',
      ],
    ]);
  });

  it.each([
    ['make 13-14', true],
    ['make 14-13', true],
    ['make 47-48', true],
    ['make 103-104', true],
    ['make 11-12', false],
    ['make 13-24', false],
    ['make 3-4', false],
    ['make A1-A2', false],
    ['make 03-04', false],
    ['break 21-22', true],
    ['break 25-26', true],
    ['break 23-24', false],
    ['break 21-26', false],
    ['changeover 11-12-14', true],
    ['changeover 15-16-18', true],
    ['changeover 12-11-14', false],
    ['changeover 11-14-12', false],
    ['changeover 11-12-18', false],
    ['changeover 11-22-14', false],
  ])('%s: %s', (contact, allowed) => {
    const found = judged(terminalNumber, `supply A 24 V AC\n-S1 push-button ${contact}`);
    expect(found).toHaveLength(allowed ? 0 : 1);
  });

  it('looks at the auxiliaries of contactors', () => {
    expect(judged(terminalNumber, 'supply A 24 V AC\n-K1 contactor make 13-14 break 23-24')).toHaveLength(1);
    expect(judged(terminalNumber, 'supply A 24 V AC\n-K1 contactor 44')).toEqual([]);
  });
});
