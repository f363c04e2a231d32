/** Short circuits: what opens, what is lost, and that it always comes to an end. */
import { describe, expect, it } from 'vitest';
import type { Device, Supply } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { solve } from '../../src/solver/index.ts';
import { button, dc24, lamp, rated, wired } from '../support/hops.ts';

const fuse = (name: string, amps?: number): Device => ({
  kind: 'fuse',
  name,
  poles: 1,
  ...(amps ? { amps } : {}),
});
const press: Scenario['acts'] = [{ kind: 'press', device: '-S1' }];
const live = (acts: Scenario['acts'] = [], faults: Scenario['faults'] = []): Scenario => ({
  start: 'live',
  faults,
  acts,
});

describe('a short circuit', () => {
  const behindTwoFuses = wired({
    devices: [fuse('-F1', 6), fuse('-F2', 2), button('-S1'), lamp('-P1'), lamp('-P2')],
    paths: ['A:L+ -F1:1-2 -F2:1-2 -S1:13-14 A:L-', '-F1:2 -P1:X1-X2 A:L-', '-F2:2 -P2:X1-X2 A:L-'],
  });

  it('opens the fuse of the lowest rating on its way and leaves the rest live', () => {
    const { solution } = solve(behindTwoFuses, live(press));
    expect(solution.outcome).toEqual({ kind: 'protection-tripped', devices: ['-F2'], supplies: [] });
    expect(solution.lamps).toEqual({ '-P1': 'lit', '-P2': 'dark' });
  });

  it('opens the fuse nearest the fault where ratings are equal', () => {
    const circuit = wired({
      devices: [fuse('-F1', 2), fuse('-F2', 2), button('-S1'), lamp('-P1')],
      paths: ['A:L+ -F1:1-2 -F2:1-2 -S1:13-14 A:L-', '-F1:2 -P1:X1-X2 A:L-'],
    });
    expect(solve(circuit, live(press)).solution.outcome).toMatchObject({ devices: ['-F2'] });
  });

  it('is cleared by the next device where one has a welded pole', () => {
    const { solution } = solve(behindTwoFuses, live(press, [{ kind: 'welded', from: '-F2:1', to: '-F2:2' }]));
    expect(solution.outcome).toEqual({ kind: 'protection-tripped', devices: ['-F1'], supplies: [] });
  });

  it('loses the supply where every protective pole on its way is welded', () => {
    const { solution } = solve(
      behindTwoFuses,
      live(press, [
        { kind: 'welded', from: '-F1:1', to: '-F1:2' },
        { kind: 'welded', from: '-F2:1', to: '-F2:2' },
      ]),
    );
    expect(solution.outcome).toEqual({ kind: 'protection-tripped', devices: [], supplies: ['A'] });
    expect(solution.lamps).toEqual({ '-P1': 'dark', '-P2': 'dark' });
  });

  it('loses the supply where nothing protects it, in the start state too', () => {
    const circuit = wired({ devices: [lamp('-P1')], paths: ['A:L+ -P1:X1-X2 A:L-', 'A:L+ A:L-'] });
    expect(solve(circuit, live()).solution.outcome).toEqual({
      kind: 'protection-tripped',
      devices: [],
      supplies: ['A'],
    });
  });

  const dc48: Supply = { name: 'B', volts: 48, current: 'DC', earthed: false };

  it('of two supplies of different voltage joined at both poles goes through both, and a fuse between them opens', () => {
    const circuit = wired({
      supplies: [dc24, dc48],
      devices: [fuse('-F1', 2), button('-S1'), lamp('-P1'), lamp('-P2', rated(48))],
      paths: ['A:L+ -F1:1-2 -S1:13-14 B:L+', 'A:L- B:L-', 'A:L+ -P1:X1-X2 A:L-', 'B:L+ -P2:X1-X2 B:L-'],
    });
    const { solution } = solve(circuit, live(press));
    expect(solution.outcome).toEqual({ kind: 'protection-tripped', devices: ['-F1'], supplies: [] });
    expect(solution.lamps).toEqual({ '-P1': 'lit', '-P2': 'lit' });
  });

  it('of two earthed supplies comes about through earth when their line poles touch', () => {
    const circuit = wired({
      supplies: [
        { ...dc24, earthed: true },
        { ...dc48, earthed: true },
      ],
      devices: [fuse('-F1', 2), button('-S1'), lamp('-P1'), lamp('-P2', rated(48))],
      paths: ['A:L+ -F1:1-2 -S1:13-14 B:L+', 'A:L+ -P1:X1-X2 A:L-', 'B:L+ -P2:X1-X2 B:L-'],
    });
    const { solution } = solve(circuit, live(press));
    expect(solution.outcome).toEqual({ kind: 'protection-tripped', devices: ['-F1'], supplies: [] });
    expect(solution.lamps).toEqual({ '-P1': 'lit', '-P2': 'lit' });
  });

  it('trips a breaker again when it is closed onto the fault, and is forgotten once it is closed for good', () => {
    const circuit = wired({
      devices: [{ kind: 'breaker', name: '-F1', poles: 1 }, button('-S1'), lamp('-P1')],
      paths: ['A:L+ -F1:1-2 -S1:13-14 A:L-', '-F1:2 -P1:X1-X2 A:L-'],
    });
    const close = { kind: 'close', device: '-F1' } as const;
    const onto = solve(circuit, live([...press, close]));
    expect(onto.solution.outcome).toEqual({ kind: 'protection-tripped', devices: ['-F1'], supplies: [] });
    expect(onto.solution.lamps['-P1']).toBe('dark');
    const mended = solve(circuit, live([...press, { kind: 'release', device: '-S1' }, close]));
    expect(mended.solution.lamps['-P1']).toBe('lit');
    expect(mended.solution.outcome).toEqual({ kind: 'steady' });
  });
});
