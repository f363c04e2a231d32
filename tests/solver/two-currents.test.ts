/** Direct and alternating current in one circuit. Voltages by superposition, each part for itself (any textbook of networks). */
import { describe, expect, it } from 'vitest';
import type { Circuit, Device, Supply } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { machineOf, meter, planOf, play, solve } from '../../src/solver/index.ts';
import { lamp, rated, wired } from '../support/hops.ts';

const dc: Supply = { name: 'A', volts: 24, current: 'DC', earthed: true };
const ac: Supply = { name: 'B', volts: 24, current: 'AC', earthed: true };
const mains: Supply = { name: 'P', volts: 400, current: '3AC', earthed: true };
const inputs: Device = { kind: 'inputs', name: '-A1', count: 1, type: '24V-1', points: [] };

const solved = (circuit: Circuit, acts: readonly Act[] = []) =>
  solve(circuit, { start: 'live', faults: [], acts: [...acts] }).solution;

const measured = (circuit: Circuit, one: string, other: string, acts: readonly Act[] = []): number => {
  const machine = machineOf(planOf(circuit));
  return meter(machine, play(machine, { start: 'live', acts: [...acts] }).state, one, other).volts;
};

describe('24 V DC and 24 V AC on one earth', () => {
  const circuit = wired({
    supplies: [dc, ac],
    devices: [lamp('-P1', rated(48)), lamp('-P2')],
    paths: ['A:L+ -P1:X1-X2 B:L', 'A:L+ -P2:X1-X2 A:L-'],
  });

  it('have the root of the sum of their squares between them: 33.94 V', () => {
    expect(measured(circuit, 'A:L+', 'B:L')).toBeCloseTo(24 * Math.SQRT2, 9);
    expect(solved(circuit).volts['-P1:X1-X2']).toBeCloseTo(24 * Math.SQRT2, 5);
    expect(solved(circuit).lamps['-P1']).toBe('dim');
  });

  it('leave each its own: 24 V against the return that they share', () => {
    expect(measured(circuit, 'A:L+', 'A:L-')).toBe(24);
    expect(measured(circuit, 'A:L-', 'A:L+')).toBe(-24);
    expect(measured(circuit, 'B:L', 'A:L-')).toBe(24);
    expect(measured(circuit, 'B:N', 'B:L')).toBe(24);
    expect(solved(circuit).lamps['-P2']).toBe('lit');
  });

  it('are a short circuit when they are joined', () => {
    const joined = wired({ supplies: [dc, ac], devices: [], paths: ['A:L+ B:L'] });
    expect(solved(joined).outcome).toEqual({ kind: 'protection-tripped', devices: [], supplies: ['A', 'B'] });
  });
});

describe('an input', () => {
  const reads = (supplies: Supply[], paths: string[]): string =>
    solved(wired({ supplies, devices: [inputs], paths })).inputs['-A1:I1']!;

  it('reads 1 on 24 V DC and 0 on a reversed one, also beside three phases', () => {
    expect(reads([dc], ['A:L+ -A1:I1-COM A:L-'])).toBe('1');
    expect(reads([dc], ['A:L- -A1:I1-COM A:L+'])).toBe('0');
    expect(reads([mains, dc], ['A:L- -A1:I1-COM A:L+'])).toBe('0');
    expect(reads([mains, dc], ['A:L+ -A1:I1-COM A:L-'])).toBe('1');
  });

  it('reads something undefined on AC, whichever way round, and 0 where the peak stays in the band of 0', () => {
    expect(reads([ac], ['B:L -A1:I1-COM B:N'])).toBe('undefined');
    expect(reads([ac], ['B:N -A1:I1-COM B:L'])).toBe('undefined');
    expect(reads([dc, ac], ['A:L+ -A1:I1-COM B:L'])).toBe('undefined');
    expect(reads([{ ...ac, volts: 3 }], ['B:L -A1:I1-COM B:N'])).toBe('0');
  });
});

describe('a supply that has failed', () => {
  it('keeps its bond to earth: what another feeds through it goes on', () => {
    const circuit = wired({
      supplies: [dc, { ...dc, name: 'B' }],
      devices: [lamp('-P1')],
      paths: ['A:L+ -P1:X1-X2 B:L-'],
    });
    const failed = solved(circuit, [{ kind: 'fail', supply: 'B' }]);
    expect(failed.lamps['-P1']).toBe('lit');
    expect(solved(circuit, [{ kind: 'fail', supply: 'A' }]).lamps['-P1']).toBe('dark');
  });
});

describe('a path', () => {
  it('is told for alternating current from the line pole to the return, whichever way the lamp is connected', () => {
    for (const hop of ['X1-X2', 'X2-X1']) {
      const circuit = wired({ supplies: [dc, ac], devices: [lamp('-P1')], paths: [`B:L -P1:${hop} B:N`] });
      const { path } = solved(circuit).trace[0]!;
      expect(path.map(({ device, enter }) => `${device}:${enter}`)).toEqual([
        'B:L',
        `-P1:${hop.slice(0, 2)}`,
        'B:N',
      ]);
    }
  });
});
