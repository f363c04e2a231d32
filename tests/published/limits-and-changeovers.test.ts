/**
 * Limits of the standards as behaviour, through the solver: IEC 61810-1 (relays) and IEC 60947-4-1 (contactors), clause
 * figures from memory; IEC 61131-2 input bands, seen; JESD8C levels, from memory. That
 * a changeover breaks before it makes was seen in a source too; what else the trade takes for granted of it is in
 * tests/practice-of-the-trade.
 */
import { describe, expect, it } from 'vitest';
import { readActs } from '../../src/circuit/index.ts';
import { machineOf, planOf, runTimed, solve } from '../../src/solver/index.ts';
import { actsOf, circuitOf } from '../support/written.ts';

function solvedAfter(text: string, acts: string) {
  const circuit = circuitOf(text);
  return solve(circuit, { start: 'live', faults: [], acts: [...actsOf(acts, circuit)] }).solution;
}

describe('must operate', () => {
  it.each([
    ['relay 1 pole', 'AC'],
    ['relay 1 pole', 'DC'],
    ['contactor 3 main', 'AC'],
    ['contactor 3 main', 'DC'],
  ])('from 85 %% of rated voltage, and not below, from rest: %s %s', (kind, current) => {
    const at = (volts: number) =>
      solvedAfter(
        `supply A ${volts} V ${current}\n-K1 ${kind} 24 V ${current}\nA:${current === 'AC' ? 'L' : 'L+'} -K1:A1-A2 A:${current === 'AC' ? 'N' : 'L-'}`,
        '',
      ).coils['-K1']!.operated;
    expect(at(20.4)).toBe(true);
    expect(at(20.3)).toBe(false);
    expect(at(26.4)).toBe(true);
  });
});

/** A coil that has operated on full voltage, then fed through a lamp of `watts`: it divides the 24 V with the coil. */
function throughLamp(kind: string, current: string, watts: number) {
  const [line, back] = current === 'AC' ? ['L', 'N'] : ['L+', 'L-'];
  const text = `supply A 24 V ${current}\n-S1 push-button make\n-K1 ${kind}\n-H1 lamp ${watts} W\nA:${line} -S1:13-14 -K1:A1-A2 A:${back}\nA:${line} -H1:X1-X2 -K1:A1`;
  return {
    rest: solvedAfter(text, '').coils['-K1']!,
    released: solvedAfter(text, 'press -S1; release -S1').coils['-K1']!,
  };
}

describe('must release', () => {
  // Coil powers: relay 1 W, contactor 4 W. The coil keeps the share watts / (watts + coil watts).
  it.each([
    ['relay 1 pole', 'DC', 0.05, 0.0476, 0.0566],
    ['relay 1 pole', 'AC', 0.15, 0.1453, 0.1597],
    ['contactor 3 main', 'DC', 0.1, 0.0971, 0.1031],
    ['contactor 3 main', 'AC', 0.2, 0.1968, 0.2032],
  ])(
    '%s %s: certainly by %d of rated voltage; above it stays as it was',
    (kind, current, _limit, below, above) => {
      const coil = kind.startsWith('relay') ? 1 : 4;
      const wattsFor = (share: number): number => Number(((coil * share) / (1 - share)).toFixed(4));
      expect(throughLamp(kind, current, wattsFor(below)).released.operated).toBe(false);
      const held = throughLamp(kind, current, wattsFor(above));
      expect(held.released).toMatchObject({ operated: true, band: 'between' });
      // The same voltage from rest doesn't operate it: what lands between depends on the past.
      expect(held.rest).toMatchObject({ operated: false, band: 'between' });
    },
  );
});

describe('controller inputs', () => {
  it.each([
    [
      '24V-1',
      [
        [5, '0'],
        [5.1, 'undefined'],
        [14.9, 'undefined'],
        [15, '1'],
        [30, '1'],
      ],
    ],
    [
      '24V-2',
      [
        [5, '0'],
        [5.1, 'undefined'],
        [10.9, 'undefined'],
        [11, '1'],
        [30, '1'],
      ],
    ],
    [
      '24V-3',
      [
        [5, '0'],
        [5.1, 'undefined'],
        [10.9, 'undefined'],
        [11, '1'],
        [30, '1'],
      ],
    ],
    [
      '3.3V',
      [
        [0.8, '0'],
        [0.9, 'undefined'],
        [1.9, 'undefined'],
        [2, '1'],
        [3.3, '1'],
      ],
    ],
  ] as const)('of type %s have the bands of the standard', (type, bands) => {
    for (const [volts, state] of bands) {
      const { inputs } = solvedAfter(
        `supply A ${volts} V DC\n-A1 inputs 1 ${type}\nA:L+ -A1:I1\nA:L- -A1:COM`,
        '',
      );
      expect({ volts, state: inputs['-A1:I1'] }).toEqual({ volts, state });
    }
  });

  it('draw a current in the range of the standard at 24 V: 2 to 15 mA, type 2 6 to 30 mA', () => {
    const milliamperes = (type: string): number => {
      const plan = planOf(circuitOf(`supply A 24 V DC\n-A1 inputs 1 ${type}\nA:L+ -A1:I1\nA:L- -A1:COM`));
      return 24_000 * plan.loads[0]!.siemens;
    };
    for (const type of ['24V-1', '24V-3']) {
      expect(milliamperes(type)).toBeGreaterThanOrEqual(2);
      expect(milliamperes(type)).toBeLessThanOrEqual(15);
    }
    expect(milliamperes('24V-2')).toBeGreaterThanOrEqual(6);
    expect(milliamperes('24V-2')).toBeLessThanOrEqual(30);
  });
});

const POLE = `supply A 24 V AC
-S1 push-button make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
`;

describe('a changeover pole', () => {
  it('breaks before it makes: for an instant both legs are open', () => {
    const circuit = circuitOf(`${POLE}A:L -K1:11-12 -H1:X1-X2 A:N\n-K1:11-14 -H2:X1-X2 A:N`);
    const read = readActs('press -S1', circuit);
    if (!read.ok) throw new Error('acts');
    const lamps = runTimed(machineOf(planOf(circuit)), { start: 'live', acts: read.value })
      .happenings.filter(({ what, act }) => what === 'lamp' && act === 0)
      .map(({ device, to, ms }) => ({ device, to, ms }));
    expect(lamps.map(({ device, to }) => `${device} ${to}`)).toEqual(['-H1 dark', '-H2 lit']);
    expect(lamps[1]!.ms).toBeGreaterThan(lamps[0]!.ms);
  });
});
