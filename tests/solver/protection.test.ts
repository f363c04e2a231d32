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

describe('a fuse without a rating', () => {
  const opened = (...amps: (number | undefined)[]): string[] => {
    const fuses = amps.map((rating, index) => fuse(`-F${index + 1}`, rating));
    const way = fuses.map(({ name }) => `${name}:1-2`).join(' ');
    const circuit = wired({ devices: [...fuses, button('-S1')], paths: [`A:L+ ${way} -S1:13-14 A:L-`] });
    const { outcome } = solve(circuit, live(press)).solution;
    return outcome.kind === 'protection-tripped' ? outcome.devices : [];
  };

  it('is taken for lower than what lies before it, and for higher than what lies behind it', () => {
    expect(opened(6, undefined)).toEqual(['-F2']);
    expect(opened(undefined, 6)).toEqual(['-F2']);
    expect(opened(undefined, undefined)).toEqual(['-F2']);
    expect(opened(2, undefined, 6)).toEqual(['-F2']);
    expect(opened(6, 2, 6)).toEqual(['-F2']);
  });
});

describe('supplies that are joined', () => {
  const [a, b]: Supply[] = [dc24, { ...dc24, name: 'B', volts: 12 }];
  const joined = (supplies: readonly Supply[], devices: readonly Device[] = [], plus = 'A:L+ B:L+') =>
    solve(wired({ supplies, devices, paths: [plus, 'A:L- B:L-'] }), live()).solution.outcome;

  it('of two voltages are both lost, in whichever order they are written', () => {
    for (const supplies of [
      [a!, b!],
      [b!, a!],
    ]) {
      const outcome = joined(supplies);
      expect(outcome.kind === 'protection-tripped' && [...outcome.supplies].sort()).toEqual(['A', 'B']);
    }
  });

  it('are parted by the lower of their fuses, by both where these are equal', () => {
    const between = (one: number, other: number) =>
      joined([a!, b!], [fuse('-F1', one), fuse('-F2', other)], 'A:L+ -F1:1-2 -F2:2-1 B:L+');
    expect(between(2, 6)).toMatchObject({ devices: ['-F1'], supplies: [] });
    expect(between(6, 2)).toMatchObject({ devices: ['-F2'], supplies: [] });
    expect(between(2, 2)).toMatchObject({ devices: ['-F1', '-F2'], supplies: [] });
  });

  it('in parallel behind one fuse both go on when it has blown', () => {
    const circuit = wired({
      supplies: [a!, { ...a!, name: 'B' }],
      devices: [fuse('-F1', 2), button('-S1'), lamp('-P1')],
      paths: ['A:L+ B:L+', 'A:L- B:L-', 'A:L+ -F1:1-2 -S1:13-14 A:L-', 'B:L+ -P1:X1-X2 A:L-'],
    });
    const { outcome, lamps } = solve(circuit, live(press)).solution;
    expect(outcome).toEqual({ kind: 'protection-tripped', devices: ['-F1'], supplies: [] });
    expect(lamps['-P1']).toBe('lit');
  });
});

describe('a lamp at a limit', () => {
  it('is lit at just 80 % of its voltage and dim at just 10 %, whatever rounding does', () => {
    const at = (volts: number, rating: number): string | undefined =>
      solve(
        wired({
          supplies: [{ ...dc24, volts }],
          devices: [lamp('-P1', rated(rating))],
          paths: ['A:L+ -P1:X1-X2 A:L-'],
        }),
        live(),
      ).solution.lamps['-P1'];
    for (const rating of [12, 24, 48, 110, 230]) {
      expect(at(0.8 * rating, rating)).toBe('lit');
      expect(at(0.1 * rating, rating)).toBe('dim');
      expect(at(0.0999 * rating, rating)).toBe('dark');
    }
  });
});
