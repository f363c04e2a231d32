/** What flashes beside a running flasher, and what only looks as if it did. */
import { describe, expect, it } from 'vitest';
import type { Device } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { everyBeginning, everyOutcome, machineOf, planOf, play, solve } from '../../src/solver/index.ts';
import { button, lamp, rated, relay, wired } from '../support/hops.ts';

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

describe('timers', () => {
  it('that one order interrupts and another does not end differently', () => {
    // -K3 opens -K9's coil for an instant only if -K2 is slower than -K1: then -K9 starts anew.
    const circuit = wired({
      devices: [
        button('-S1'),
        relay('-K1'),
        relay('-K2'),
        { kind: 'on-delay', name: '-K9', seconds: 5, poles: 1, rating: rated(24) },
      ],
      paths: [
        'A:L+ -S1:13-14 -K1:A1-A2 A:L-',
        'A:L+ -S1:33-34 -K2:A1-A2 A:L-',
        'A:L+ -K1:11-12 -K9:A1-A2 A:L-',
        'A:L+ -K2:11-14 -K9:A1',
      ],
    });
    const machine = machineOf(planOf(circuit));
    let standing = everyBeginning(machine, 'live');
    for (const act of [{ kind: 'wait', seconds: 3 }, press, { kind: 'wait', seconds: 3 }] as const)
      standing = everyOutcome(machine, standing, act);
    const timer = machine.mechanismOf.get('-K9')!;
    expect(standing.endings.map(({ states }) => states[0]!.at[timer]).sort()).toEqual([1, 2]);
  });

  it('come to the right span after a long wait, and to no other moment than was waited for', () => {
    const slow: Device = { kind: 'flasher', name: '-K3', on: 0.3, off: 0.7, poles: 1, rating: rated(24) };
    const machine = machineOf(planOf(wired({ devices: [slow], paths: ['A:L+ -K3:A1-A2 A:L-'] })));
    const standsAfter = (...seconds: number[]) => {
      const acts = seconds.map((each): Act => ({ kind: 'wait', seconds: each }));
      const { state } = play(machine, { start: 'live', acts });
      return [state.at[0], state.now];
    };
    expect(standsAfter(1000, 0.1)).toEqual([2, 1000.1]);
    expect(standsAfter(1000, 0.4)).toEqual([1, 1000.4]);
    expect(standsAfter(1000, 0.95)).toEqual([1, 1000.95]);
    expect(standsAfter(1000, 1.1)).toEqual([2, 1001.1]);
    expect(standsAfter(1000.4, 86_400)).toEqual([1, 87_400.4]);
  });
});
