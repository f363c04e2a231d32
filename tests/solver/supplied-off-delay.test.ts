/**
 * An off-delay with a supply of its own and a control input: it operates at once with the signal, its time runs from the signal's
 * end, and it releases at once where its supply fails (IEC 61812-1, power on as a condition of the function; from memory).
 */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { machineOf, planOf, runTimed, solve } from '../../src/solver/index.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';

const supplied = circuitOf(`
# Flour line: dust fan runs on
supply A 24 V DC
-F1 breaker
-S1 selector Off/On make On
-K1 supplied-off-delay 5 s
-H1 lamp
A:L+ -F1:1-2 -K1:A1-A2 A:L-
-F1:2 -S1:13-14 -K1:B1-A2
A:L+ -K1:15-18 -H1:X1-X2 A:L-`);

const standing = (on: Circuit, ...acts: string[]): string =>
  acts
    .map((_, index) => solve(on, scenarioOf(acts.slice(0, index + 1).join('; '))).solution.lamps['-H1']!)
    .map((state) => (state === 'lit' ? '+' : state === 'dark' ? '-' : state))
    .join('');
const on = 'turn -S1 On';
const off = 'turn -S1 Off';
const lost = 'open -F1';
const back = 'close -F1';
const wait = (seconds: number): string => `wait ${seconds} s`;

describe('an off-delay with a supply of its own', () => {
  it('rests with its supply alone, operates with the signal, and counts from the end of that', () => {
    expect(standing(supplied, wait(60), on, wait(60), off, wait(4), wait(1.1))).toBe('-++++-');
    // A signal that comes back begins the time anew.
    expect(standing(supplied, on, off, wait(4), on, off, wait(4), wait(1.1))).toBe('++++++-');
  });

  it('releases at once where its supply fails, and what was left of its time is lost', () => {
    expect(standing(supplied, on, off, wait(1), lost)).toBe('+++-');
    expect(standing(supplied, on, off, wait(1), lost, back, wait(1))).toBe('+++---');
    expect(standing(supplied, on, lost)).toBe('+-');
    // The signal is still there when the supply returns.
    expect(standing(supplied, on, lost, back)).toBe('+-+');
    expect(standing(supplied, on, 'fail A', 'restore A')).toBe('+-+');
  });

  it('unlike one that has nothing but its coil, which runs its time out', () => {
    const plain = circuitOf(`
supply A 24 V DC
-F1 breaker
-S1 selector Off/On make On
-K1 off-delay 5 s
-H1 lamp
A:L+ -F1:1-2 -S1:13-14 -K1:A1-A2 A:L-
A:L+ -K1:15-18 -H1:X1-X2 A:L-`);
    expect(standing(plain, on, off, wait(1), lost, wait(3), wait(1.1))).toBe('+++++-');
    expect(standing(supplied, on, off, wait(1), lost, wait(3), wait(1.1))).toBe('+++---');
  });

  it('does nothing by the signal where its supply is off, and tells both of what it has', () => {
    const loose = { ...scenarioOf(on), faults: scenarioOf('', '-K1:A1 broken').faults };
    const { solution } = solve(supplied, loose);
    expect(solution.coils).toMatchObject({
      '-K1': { operated: false, energised: true },
      '-K1:A1': { operated: false, energised: false },
    });
    expect(solve(supplied, scenarioOf(on)).solution.coils).toMatchObject({
      '-K1': { operated: true, energised: true },
      '-K1:A1': { operated: true, energised: true },
    });
  });

  it('stays as it is between the limits of its supply', () => {
    const weak = circuitOf(`
supply A 24 V DC
-S0 push-button break
-S1 push-button make
-S2 push-button make
-K1 supplied-off-delay 5 s
-H1 lamp
-H2 lamp 1 W
A:L+ -S0:11-12 -H2:X1-X2 -K1:A1-A2 A:L-
-S0:12 -S1:13-14 -K1:A1
A:L+ -S2:13-14 -K1:B1-A2
A:L+ -K1:15-18 -H1:X1-X2 A:L-`);
    // Half its voltage doesn't let it begin, and does keep it.
    expect(standing(weak, 'press -S2', 'press -S1', 'release -S1', 'release -S2', wait(4), wait(1.1))).toBe(
      '-++++-',
    );
    expect(standing(weak, 'press -S1', 'press -S2', 'release -S1', 'press -S0')).toBe('-++-');
  });

  it('does the same in time as without it', () => {
    const acts = scenarioOf([on, off, wait(2), on, wait(1), off, wait(4), lost, back, wait(3)].join('; '));
    const machine = machineOf(planOf(supplied));
    const timed = runTimed(machine, acts);
    expect(timed.rested).toBe(true);
    const operated = timed.happenings.filter(({ what, device }) => what === 'arrives' && device === '-K1');
    expect(operated.map(({ to }) => to)).toEqual(['operated', 'rest']);
  });
});
