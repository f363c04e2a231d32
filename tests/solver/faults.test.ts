/** Each fault on a circuit small enough to check by eye. What each does is said in shared/scenario.ts. */
import { describe, expect, it } from 'vitest';
import { machineOf, planOf, play, solve, traceLoad } from '../../src/solver/index.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';

const PAIR = circuitOf(`
supply A 24 V DC
-F1 fuse
-S1 push-button make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
-H3 lamp
A:L+ -F1:1-2 -S1:13-14 -K1:A1-A2 A:L-
-F1:2 -K1:11-12 -H1:X1-X2 A:L-
-K1:14 -H2:X1-X2 A:L-
-F1:2 -K1:21-24 -H3:X1-X2 A:L-`);

/** Which of the three lamps are lit: at rest, and while the button is pressed. */
const lit = (fault: string): string[] =>
  ['', 'press -S1'].map((acts) => {
    const { lamps } = solve(PAIR, scenarioOf(acts, fault)).solution;
    return Object.keys(lamps)
      .filter((id) => lamps[id] === 'lit')
      .join(' ');
  });

describe('a fault', () => {
  it.each([
    ['', ['-H1', '-H2 -H3']],
    ['-H1:X1 broken', ['', '-H2 -H3']],
    ['-K1:A2 broken', ['-H1', '-H1']],
    // The wire between them, from whichever side it is named, and no other.
    ['-F1:2 -S1:13 broken', ['-H1', '-H1']],
    ['-S1:13 -F1:2 broken', ['-H1', '-H1']],
    ['-K1:14 -H2:X1 broken', ['-H1', '-H3']],
    ['-K1:12 -K1:14 crossed', ['-H2', '-H1 -H3']],
    ['-K1:A1-A2 open', ['-H1', '-H1']],
    ['-K1:A2-A1 open', ['-H1', '-H1']],
    ['-H2:X1-X2 open', ['-H1', '-H3']],
    ['-K1 stuck', ['-H1', '-H1']],
    ['-F1 blown', ['', '']],
    ['-S1:13-14 welded', ['-H2 -H3', '-H2 -H3']],
    // The leg that is welded keeps the other one of its pole open; the other pole moves.
    ['-K1:11-12 welded', ['-H1', '-H1 -H3']],
    ['-K1:11-14 welded', ['-H2', '-H2 -H3']],
    ['-K1:21-24 welded', ['-H1 -H3', '-H2 -H3']],
    ['-K1:11-12 dirty 1000000 ohm', ['', '-H2 -H3']],
    ['-K1:11-12 dirty 1 ohm', ['-H1', '-H2 -H3']],
    ['-S1:13-14 dirty 1000000 ohm', ['-H1', '-H1']],
  ])('%s', (fault, expected) => {
    expect(lit(fault)).toEqual(expected);
  });

  it('of a load short-circuited blows the fuse when current comes to it', () => {
    const { outcome } = solve(PAIR, scenarioOf('press -S1', '-H2:X1-X2 shorted')).solution;
    expect(outcome).toEqual({ kind: 'protection-tripped', devices: ['-F1'], supplies: [] });
    expect(solve(PAIR, scenarioOf('', '-H2:X1-X2 shorted')).solution.lamps['-H1']).toBe('lit');
  });

  it('of a dirty contact takes its share of the voltage by its resistance', () => {
    // A lamp of 2 W at 24 V has 288 ohms: behind as many it has half the voltage.
    const { volts } = solve(PAIR, scenarioOf('', '-K1:11-12 dirty 288 ohm')).solution;
    expect(volts['-H1:X1-X2']).toBeCloseTo(12, 5);
  });

  it('of a main contact of a contactor keeps its break contacts open, and they don’t keep the mains (IEC 60947-4-1, annex F, from memory)', () => {
    const contactor = circuitOf(`
supply A 24 V DC
-S1 push-button make
-Q1 contactor 1 main make 13-14 break 21-22
-H1 lamp
-H2 lamp
A:L+ -S1:13-14 -Q1:A1-A2 A:L-
A:L+ -Q1:1-2 -H1:X1-X2 A:L-
A:L+ -Q1:21-22 -H2:X1-X2 A:L-`);
    const states = (acts: string, fault: string) => {
      const { lamps } = solve(contactor, scenarioOf(acts, fault)).solution;
      return [lamps['-H1'], lamps['-H2']];
    };
    expect(states('', '-Q1:1-2 welded')).toEqual(['lit', 'dark']);
    expect(states('press -S1', '-Q1:21-22 welded')).toEqual(['lit', 'lit']);
  });

  it('of a lamp burnt through leaves nothing that could bring current to one behind it', () => {
    const series = circuitOf(`
supply A 24 V DC
-S1 push-button make
-H1 lamp
-H2 lamp
A:L+ -S1:13-14 -H1:X1-X2 -H2:X1-X2 A:L-`);
    const stops = (fault: string) => {
      const { faults } = scenarioOf('', fault);
      const machine = machineOf(planOf(series, faults));
      const { state } = play(machine, scenarioOf('', fault));
      return traceLoad(machine, state, '-H2')!.stoppedBy.map(({ device }) => device);
    };
    expect(stops('')).toEqual(['-S1']);
    expect(stops('-H1:X1-X2 open')).toEqual([]);
  });
});
