/** What exploring every order may cost, and what is said when it would cost more. */
import { describe, expect, it } from 'vitest';
import type { Act } from '../../shared/scenario.ts';
import { everyBeginning, everyOutcome, machineOf, planOf, solve } from '../../src/solver/index.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';

const PRESS: Act = { kind: 'press', device: '-S1' };

/** Four relays of which each is locked out by the three others, all put on by one button. */
const FOUR = circuitOf(
  [
    'supply A 24 V DC\n-S1 push-button make',
    ...['-K1', '-K2', '-K3', '-K4'].map((relay) => `${relay} relay 3 poles`),
    'A:L+ -S1:13-14 -K2:11-12 -K3:21-22 -K4:31-32 -K1:A1-A2 A:L-',
    '-S1:14 -K3:11-12 -K4:21-22 -K1:31-32 -K2:A1-A2 A:L-',
    '-S1:14 -K4:11-12 -K1:21-22 -K2:31-32 -K3:A1-A2 A:L-',
    '-S1:14 -K1:11-12 -K2:21-22 -K3:31-32 -K4:A1-A2 A:L-',
  ].join('\n'),
);

/** As many latching relays as wanted, each set only if the first of two relays operates before the second: two ways each. */
const inTurn = (count: number) => {
  const all = Array.from({ length: count }, (_, index) => index);
  return circuitOf(
    [
      'supply A 24 V DC\n-S1 push-button make',
      ...all.flatMap((at) => [`-K${10 + at} relay`, `-K${30 + at} relay`, `-K${50 + at} latching-relay`]),
      ...all.flatMap((at) => [
        `${at === 0 ? 'A:L+ -S1:13-14' : '-S1:14'} -K${10 + at}:A1-A2 A:L-`,
        `-S1:14 -K${30 + at}:A1-A2 A:L-`,
        `A:L+ -K${10 + at}:11-14 -K${30 + at}:11-12 -K${50 + at}:A1-A2 A:L-`,
      ]),
    ].join('\n'),
  );
};

describe('exploring', () => {
  const machine = machineOf(planOf(FOUR));
  const rest = everyBeginning(machine, 'live');
  const whole = everyOutcome(machine, rest, PRESS);

  it('finds each of four relays that lock one another out operated alone, or all of them going on for ever', () => {
    expect(whole.complete).toBe(true);
    const resting = whole.endings.filter(({ states }) => states.length === 1);
    const operated = resting.map(
      ({ states }) => [...states[0]!.at].filter((mask, index) => index > 0 && mask === 2).length,
    );
    expect(operated).toEqual([1, 1, 1, 1]);
    expect(whole.endings).toHaveLength(5);
  });

  it('is complete with as many states as it has, and with fewer comes to one ending and says that this isn’t all', () => {
    let complete = 0;
    let before = false;
    for (const states of [1, 20, 100, 200, 250, 300, 400, 1000]) {
      const found = everyOutcome(machine, rest, PRESS, { states });
      if (found.complete) {
        complete++;
        expect(found).toEqual(whole);
      } else {
        expect(before, `${states} states`).toBe(false);
        expect(found.endings.map(({ states: some }) => some.length)).toEqual([1]);
      }
      before = found.complete;
    }
    expect([complete > 0, complete < 8]).toEqual([true, true]);
  });

  it('stops when it has cost what it may, over all acts of a scenario together', () => {
    const work = 5_000;
    const little = everyOutcome(machine, rest, PRESS, { states: 1e6, work });
    expect(little.complete).toBe(false);
    expect(little.work!).toBeGreaterThan(work - 1);
    // One state more is looked at before it is noticed.
    expect(little.work!).toBeLessThan(work + 1_000);
    const enough = everyOutcome(machine, rest, PRESS, { states: 1e6, work: whole.work! });
    expect(enough.complete).toBe(true);
    // What was spent before leaves less.
    const late = everyOutcome(machine, { ...rest, work: whole.work! - work }, PRESS, {
      states: 1e6,
      work: whole.work!,
    });
    expect(late.complete).toBe(false);
    expect(late.work! - whole.work! + work).toBeLessThan(work + 1_000);
    // Once it isn't complete it stays so, and costs nothing more.
    const after = everyOutcome(machine, little, { kind: 'release', device: '-S1' });
    expect(after).toMatchObject({ complete: false, work: little.work });
  });

  it('tells up to 64 ways, and more are too many', () => {
    const outcomeOf = (count: number) => solve(inTurn(count), scenarioOf('press -S1')).solution.outcome;
    expect(outcomeOf(1)).toEqual({ kind: 'race', devices: ['-K50'], ways: 2 });
    expect(outcomeOf(6)).toMatchObject({ kind: 'race', ways: 64 });
    expect(outcomeOf(7).kind).toBe('undecided');
  });
});

describe('what never rests', () => {
  const buzzer = machineOf(
    planOf(
      circuitOf(`
supply A 24 V DC
-S1 push-button make
-K1 relay 3 poles
-K2 relay
-K3 relay
-H1 lamp
A:L+ -S1:13-14 -K1:11-12 -K1:A1-A2 A:L-
A:L+ -K1:21-24 -K2:A1-A2 A:L-
A:L+ -K2:11-12 -K3:A1-A2 A:L-
A:L+ -K1:31-34 -H1:X1-X2 A:L-`),
    ),
  );

  it('takes with it what follows from it, in each of its states', () => {
    const { endings } = everyOutcome(buzzer, everyBeginning(buzzer, 'live'), PRESS);
    expect(endings).toHaveLength(1);
    const { states } = endings[0]!;
    expect(states.length).toBeGreaterThan(1);
    const at = (id: string) => buzzer.mechanismOf.get(id)!;
    for (const state of states) {
      const made = state.at[at('-K1')] === 2;
      expect([state.at[at('-K2')], state.at[at('-K3')]]).toEqual(made ? [2, 1] : [1, 2]);
    }
    expect(new Set(states.map((state) => state.at[at('-K2')])).size).toBe(2);
  });
});

describe('where two supplies are one', () => {
  it('every order is tried all the same', () => {
    const joined = circuitOf(`
supply A 24 V DC
supply B 24 V DC
-S1 push-button make
-S2 push-button break
-K1 relay
-K2 relay
A:L- B:L-
A:L+ -S2:11-12 B:L+
A:L+ -S1:13-14 -K2:11-12 -K1:A1-A2 A:L-
-S1:14 -K1:11-12 -K2:A1-A2 B:L-`);
    const { outcome } = solve(joined, scenarioOf('press -S1')).solution;
    expect(outcome).toEqual({ kind: 'race', devices: ['-K1', '-K2'], ways: 3 });
  });
});

describe('a changeover on its way', () => {
  it('has both legs open, so that a relay fed by either may drop: a race, shown with it at rest', () => {
    const passing = circuitOf(`
supply A 24 V DC
-S1 push-button make
-K1 relay
-K2 relay 2 poles
-H1 lamp
A:L+ -S1:13-14 -K1:A1-A2 A:L-
A:L+ -K1:11-12 -K2:A1-A2 A:L-
-K1:14 -K2:11-14 -K2:A1
A:L+ -K2:21-24 -H1:X1-X2 A:L-`);
    expect(solve(passing, scenarioOf('')).solution.lamps).toEqual({ '-H1': 'lit' });
    const { outcome, lamps } = solve(passing, scenarioOf('press -S1')).solution;
    expect(outcome).toEqual({ kind: 'race', devices: ['-K2'], ways: 2 });
    expect(lamps).toEqual({ '-H1': 'dark' });
  });
});
