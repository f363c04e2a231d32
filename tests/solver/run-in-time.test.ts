/** When contacts move, against the times of their mechanisms: operate and release times are not the same. */
import { describe, expect, it } from 'vitest';
import { begin, machineOf, meter, planOf, runTimed, solve } from '../../src/solver/index.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';

describe('the run in time', () => {
  it('has a relay leave and arrive by its operate time, and by its release time when its coil is off', () => {
    const circuit = circuitOf(`
supply A 24 V DC
-S1 push-button make
-K1 relay
-H1 lamp
A:L+ -S1:13-14 -K1:A1-A2 A:L-
A:L+ -K1:11-14 -H1:X1-X2 A:L-`);
    const machine = machineOf(planOf(circuit));
    const speeds = machine.plan.mechanisms.find(({ id }) => id === '-K1')!.speeds;
    expect(speeds.operateMs).not.toBe(speeds.releaseMs);
    const { happenings } = runTimed(machine, scenarioOf('press -S1; release -S1'));
    const moves = happenings.filter(({ what, device }) => device === '-K1' && /leaves|arrives/.test(what));
    // From when the button has made, or broken, the circuit of the coil.
    const begun = (act: number): number =>
      happenings.find((one) => one.act === act && /energised/.test(one.what))!.ms;
    expect(moves.map(({ what, act, ms }) => [what, act, ms - begun(act)])).toEqual([
      ['leaves', 0, speeds.operateMs - speeds.travelMs],
      ['arrives', 0, speeds.operateMs],
      ['leaves', 1, speeds.releaseMs - speeds.travelMs],
      ['arrives', 1, speeds.releaseMs],
    ]);
  });
});

describe('what is told of a run', () => {
  const circuit = circuitOf(`
supply A 24 V DC
-S1 push-button make
-H1 lamp
A:L+ -S1:13-14 -H1:X1-X2 A:L-`);
  const machine = machineOf(planOf(circuit));

  it('has each act by its kind where nobody says otherwise', () => {
    const { happenings } = runTimed(machine, scenarioOf('press -S1; wait 2 s; release -S1'));
    const acts = happenings.filter(({ what }) => what === 'act');
    expect(acts.map(({ device, to, ms }) => [device, to, ms >= 2000])).toEqual([
      ['-S1', 'press', false],
      ['', 'wait', false],
      ['-S1', 'release', true],
    ]);
  });

  it('a meter held to a terminal that isn’t there is a fault of the program, which names it', () => {
    const state = begin(machine, 'live');
    expect(() => meter(machine, state, '-H9:X1', 'A:L-')).toThrow('no terminal -H9:X1');
    expect(() => meter(machine, state, '-H1:X1', '-H9:X2')).toThrow('no terminal -H9:X2');
  });
});

describe('a motor', () => {
  const motor = (ends: string) =>
    circuitOf(`
supply P 400 V 3AC
-F1 fuse
-F2 fuse
-F3 fuse
-M1 motor 400 V 6 terminals
P:L1 -F1:1-2 -M1:U1
P:L2 -F2:1-2 -M1:V1
P:L3 -F3:1-2 -M1:W1
${ends}`);
  const DELTA = '-M1:U1 -M1:W2\n-M1:V1 -M1:U2\n-M1:W1 -M1:V2';
  const STAR = '-M1:U2 -M1:V2\n-M1:V2 -M1:W2';
  const stands = (ends: string, blown: readonly string[]) =>
    solve(motor(ends), {
      start: 'live',
      faults: blown.map((device) => ({ kind: 'blown', device })),
      acts: [],
    }).solution.loads['-M1'];

  it('stands as its worst winding does, whichever line is lost', () => {
    expect(stands(DELTA, [])).toBe('lit');
    expect(stands(STAR, [])).toBe('dim');
    for (const fuse of ['-F1', '-F2', '-F3']) {
      // One winding keeps the whole voltage, the others have half of it.
      expect(stands(DELTA, [fuse])).toBe('dim');
      // Two windings share the voltage, the third has none.
      expect(stands(STAR, [fuse])).toBe('dark');
    }
    expect(stands(DELTA, ['-F1', '-F2'])).toBe('dark');
  });
});
