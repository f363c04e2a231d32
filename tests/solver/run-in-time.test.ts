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

describe('what is seen of a run', () => {
  const seen = (text: string, acts: string, faults = '') => {
    const { happenings } = runTimed(
      machineOf(planOf(circuitOf(text), scenarioOf('', faults).faults)),
      scenarioOf(acts),
    );
    return happenings.flatMap(({ what, device, to, act }) =>
      what === 'act' ? [] : [`${act} ${what} ${device} ${to}`],
    );
  };

  it('of a coil is that it comes on with enough to operate and goes off with too little, not what lies between', () => {
    const half = `
supply A 24 V DC
-S0 push-button break
-S1 push-button make
-K1 relay
-H2 lamp 1 W
A:L+ -S0:11-12 -H2:X1-X2 -K1:A1-A2 A:L-
-S0:12 -S1:13-14 -K1:A1`;
    const coil = seen(half, 'press -S1; release -S1; press -S0; release -S0; hold -K1; free -K1');
    expect(coil.filter((told) => /energised/.test(told))).toEqual([
      '0 energised -K1 energised',
      '2 de-energised -K1 de-energised',
      // The hand: it is held, and let go with half its voltage it isn't off.
      '4 energised -K1 energised',
    ]);
  });

  it('are inputs as they are read, loads and lamps as they stand, what trips, and no dirt', () => {
    const text = `
supply A 24 V DC
-F1 fuse
-S1 push-button make make
-S2 push-button make
-A1 inputs 1 24V-3
-Y1 valve
-H1 lamp
A:L+ -F1:1-2 -S1:13-14 -A1:I1-COM A:L-
-F1:2 -S1:23-24 -Y1:A1-A2 A:L-
-F1:2 -H1:X1-X2 A:L-
-F1:2 -S2:13-14 A:L-`;
    expect(seen(text, 'press -S1; release -S1; press -S2', '-S1:13-14 dirty 1 ohm')).toEqual([
      '-1 lamp -H1 lit',
      '0 leaves -S1 pressed',
      '0 arrives -S1 pressed',
      '0 input -A1:I1 1',
      '0 load -Y1 lit',
      '1 leaves -S1 rest',
      '1 input -A1:I1 0',
      '1 load -Y1 dark',
      '1 arrives -S1 rest',
      '2 leaves -S2 pressed',
      '2 arrives -S2 pressed',
      '2 trips -F1 open',
      '2 lamp -H1 dark',
    ]);
  });

  it('is shown to who watches, moment by moment, with how much has been told by then', () => {
    const machine = machineOf(
      planOf(
        circuitOf(`
supply A 24 V DC
-S1 push-button make
-H1 lamp
A:L+ -S1:13-14 -H1:X1-X2 A:L-`),
      ),
    );
    const watched: [ms: number, happened: number, volts: number][] = [];
    const { happenings } = runTimed(machine, scenarioOf('press -S1'), undefined, (state, happened) => {
      watched.push([state.now * 1000, happened, state.volts[0]![0]!]);
    });
    expect(watched.at(-1)).toEqual([happenings.at(-1)!.ms, happenings.length, 24]);
    // At the start, at the act, when the button leaves and when it arrives.
    expect(watched.map(([, happened]) => happened)).toEqual([0, 1, 2, 4]);
  });
});

describe('a wait', () => {
  const delayed = machineOf(
    planOf(
      circuitOf(`
supply A 24 V DC
-S1 push-button make
-K1 on-delay 5 s
-H1 lamp
A:L+ -S1:13-14 -K1:A1-A2 A:L-
A:L+ -K1:15-18 -H1:X1-X2 A:L-`),
    ),
  );

  it('lasts as long as it says, and lets what it has begun come to its end', () => {
    const { state } = runTimed(delayed, scenarioOf('wait 2 s; wait 3 s'));
    expect(state.now).toBeCloseTo(5, 9);
    const { happenings, rested } = runTimed(delayed, scenarioOf('press -S1; wait 5 s'));
    const lit = happenings.find(({ device }) => device === '-H1')!;
    const energised = happenings.find(({ what }) => what === 'energised')!;
    expect(rested).toBe(true);
    // Due within the wait, it still has to move.
    expect(lit.act).toBe(1);
    expect(lit.ms - energised.ms).toBeGreaterThan(5000);
    expect(lit.ms - energised.ms).toBeLessThan(5100);
  });

  it('gives up on an act after which nothing comes to rest, and goes on with the next at its own time', () => {
    const buzzer = machineOf(
      planOf(
        circuitOf(`
supply A 24 V DC
-S1 push-button make
-K1 relay 2 poles
A:L+ -S1:13-14 -K1:11-12 -K1:A1-A2 A:L-`),
      ),
    );
    const { happenings, rested, state } = runTimed(buzzer, scenarioOf('press -S1; release -S1; wait 10 s'));
    expect(rested).toBe(false);
    expect(state.at[buzzer.mechanismOf.get('-K1')!]).toBe(1);
    const acts = happenings.filter(({ what }) => what === 'act').map(({ ms }) => ms);
    expect(state.now * 1000 - acts[2]!).toBeCloseTo(10_000, 6);
    const onAndOn = runTimed(buzzer, scenarioOf('press -S1; wait 100 s'));
    const [, wait] = onAndOn.happenings.filter(({ what }) => what === 'act');
    expect(onAndOn.rested).toBe(false);
    // It is cut short in what it shows, and its time passes all the same.
    expect(onAndOn.state.now * 1000).toBeGreaterThanOrEqual(wait!.ms + 100_000);
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
