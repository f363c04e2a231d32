/** What flashes beside a running flasher, and what only looks as if it did. */
import { describe, expect, it } from 'vitest';
import type { Device } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { solve } from '../../src/solver/index.ts';
import { button, lamp, rated, wired } from '../support/hops.ts';

const flasher: Device = { kind: 'flasher', name: '-K3', on: 0.5, off: 1, poles: 2, rating: rated(24) };
const onDelay = (seconds: number): Device => ({
  kind: 'on-delay',
  name: '-K1',
  seconds,
  poles: 1,
  rating: rated(24),
});
const press: Act = { kind: 'press', device: '-S1' };

const solved = (devices: readonly Device[], paths: readonly string[], acts: readonly Act[]) =>
  solve(wired({ devices, paths }), { start: 'live', faults: [], acts: [...acts] }).solution;

describe('a timer beside a flasher', () => {
  const paths = [
    'A:L+ -S1:13-14 -K1:A1-A2 A:L-',
    '-S1:14 -K3:A1-A2 A:L-',
    'A:L+ -K1:15-18 -P1:X1-X2 A:L-',
    'A:L+ -K3:15-18 -P2:X1-X2 A:L-',
  ];
  const endOf = (...acts: Act[]) => {
    const { outcome, lamps } = solved(
      [button('-S1'), onDelay(5), flasher, lamp('-P1'), lamp('-P2')],
      paths,
      acts,
    );
    return { outcome, lamps };
  };

  it('in its delay has not changed over, and does not flash', () => {
    expect(endOf(press)).toEqual({
      outcome: { kind: 'keeps-switching', devices: ['-K3'] },
      lamps: { '-P1': 'dark', '-P2': 'flashing' },
    });
    expect(endOf(press, { kind: 'wait', seconds: 3 }).lamps['-P1']).toBe('dark');
    expect(endOf(press, { kind: 'wait', seconds: 6 }).lamps['-P1']).toBe('lit');
  });

  it('that the flasher starts anew each time flashes with it when its delay is short enough', () => {
    const fed = ['A:L+ -K3:A1-A2 A:L-', 'A:L+ -K3:15-18 -K1:A1-A2 A:L-', 'A:L+ -K1:15-18 -P1:X1-X2 A:L-'];
    const lampOf = (seconds: number) =>
      solved([onDelay(seconds), flasher, lamp('-P1')], fed, []).lamps['-P1'];
    expect(lampOf(0.3)).toBe('flashing');
    expect(lampOf(0.7)).toBe('dark');
  });
});

describe('a fuse that has blown beside a flasher', () => {
  it('is told', () => {
    const { outcome } = solved(
      [button('-S1'), flasher, { kind: 'fuse', name: '-F1', poles: 1, amps: 2 }],
      ['A:L+ -K3:A1-A2 A:L-', 'A:L+ -F1:1-2 -S1:13-14 A:L-'],
      [press],
    );
    expect(outcome).toEqual({
      kind: 'keeps-switching',
      devices: ['-K3'],
      out: { devices: ['-F1'], supplies: [] },
    });
  });
});
