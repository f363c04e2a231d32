/** Each misconception on a circuit where it gives another result, and on one where it can't. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { families, generate } from '../../src/generator/index.ts';
import { MISCONCEPTIONS, predict, predictAll, viewOf } from '../../src/misconceptions/index.ts';
import { machineOf, meter, planOf, play, readState } from '../../src/solver/index.ts';
import { circuitOf, scenarioOf } from './reading.ts';

const byId = (id: string) => {
  const found = MISCONCEPTIONS.find((misconception) => misconception.id === id);
  if (!found) throw new Error(`no misconception ${id}`);
  return found;
};

/** What is read: lamps, inputs and coils as they rightly are and as the misconception has them, or undefined. */
function read(id: string, on: Circuit, scenario: Scenario) {
  const machine = machineOf(planOf(on, scenario.faults));
  const all = (at: ReturnType<typeof readState>): Record<string, string> => ({
    ...at.lamps,
    ...at.inputs,
    ...Object.fromEntries(
      Object.entries(at.coils).map(([coil, { operated }]) => [coil, operated ? 'operated' : 'rest']),
    ),
  });
  const right = all(readState(machine, play(machine, scenario).state));
  const prediction = predict(byId(id), on, scenario);
  return { right, wrong: prediction && all(readState(prediction.machine, prediction.state)) };
}

const plain = circuitOf(`
supply A 24 V AC
-F1 breaker
-H1 lamp
A:L -F1:1-2 -H1:X1-X2 A:N`);
const statusPair = circuitOf(`
supply A 24 V AC
-F1 breaker
-B1 field-contact make
-K1 relay
-H1 lamp
-H2 lamp
A:L -F1:1-2 -B1:13-14 -K1:A1-A2 A:N
-F1:2 -K1:11-12 -H1:X1-X2 A:N
-K1:11-14 -H2:X1-X2 A:N`);
const sealed = circuitOf(`
supply A 24 V AC
-S0 push-button break 21-22
-S1 push-button make
-K1 relay 2 poles
-H1 lamp
A:L -S0:21-22 -S1:13-14 -K1:A1-A2 A:N
-S0:22 -K1:11-14 -S1:14
A:L -K1:21-24 -H1:X1-X2 A:N`);
const jog = circuitOf(`
supply A 24 V AC
-S1 push-button make
-K1 relay
-H1 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N`);
const chain = circuitOf(`
supply A 24 V AC
-B1 field-contact make
-K1 relay
-K2 relay
-H1 lamp
-H2 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -K2:A1-A2 A:N
-K1:12 -H2:X1-X2 A:N
A:L -K2:11-14 -H1:X1-X2 A:N`);
const interlock = circuitOf(`
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-K1 relay 2 poles
-K2 relay 2 poles
-H1 lamp
-H2 lamp
A:L -S1:13-14 -K2:11-12 -K1:A1-A2 A:N
A:L -S2:13-14 -K1:11-12 -K2:A1-A2 A:N
A:L -K1:21-24 -H1:X1-X2 A:N
A:L -K2:21-24 -H2:X1-X2 A:N`);
const twoSheets = circuitOf(`
supply A 24 V AC
-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
sheet 1
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N
sheet 2
A:L -K1:21-24 -H2:X1-X2 A:N`);
const delayed = (kind: 'on-delay' | 'off-delay') =>
  circuitOf(`
supply A 24 V AC
-S1 push-button make
-K1 ${kind} 5 s
-H1 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -K1:15-18 -H1:X1-X2 A:N`);
const latch = circuitOf(`
supply A 24 V AC
-S1 push-button make
-S2 push-button make
-K1 latching-relay
-H1 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -S2:13-14 -K1:B1-B2 A:N
A:L -K1:11-14 -H1:X1-X2 A:N`);
const twoSupplies = circuitOf(`
supply A 24 V AC
supply B 24 V DC
-Q1 isolator
-Q2 isolator
-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
-A1 inputs 2 24V-3
A:L -Q1:1-2 -K1:11-12 -H1:X1-X2 A:N
A:L -B1:13-14 -K1:A1-A2 A:N
B:L+ -Q2:1-2 -K1:21-22 -A1:I1-COM B:L-`);
const withBreakInput = circuitOf(`
supply B 24 V DC
-B1 field-contact break 21-22
-B2 field-contact make
-A1 inputs 2 24V-3
B:L+ -B1:21-22 -A1:I1-COM B:L-
B:L+ -B2:13-14 -A1:I2`);
const isolatedReturn = circuitOf(`
supply A 24 V AC
-Q1 isolator 2 poles
-H1 lamp
A:L -Q1:1-2 -H1:X1-X2 -Q1:4-3 A:N`);

interface Case {
  readonly id: string;
  readonly on: Circuit;
  readonly does: Scenario;
  /** What somebody with the idea gets instead of what is right. */
  readonly instead: Record<string, string>;
  readonly noDifference: readonly [Circuit, Scenario];
}

const CASES: readonly Case[] = [
  {
    id: 'nothing-moves',
    on: statusPair,
    does: scenarioOf('make -B1'),
    instead: { '-H1': 'lit', '-H2': 'dark', '-K1': 'rest' },
    noDifference: [plain, scenarioOf()],
  },
  {
    id: 'make-for-break',
    on: statusPair,
    does: scenarioOf('make -B1'),
    instead: { '-H1': 'lit', '-H2': 'dark' },
    noDifference: [plain, scenarioOf()],
  },
  {
    id: 'break-never-opens',
    on: statusPair,
    does: scenarioOf('make -B1'),
    instead: { '-H1': 'lit' },
    noDifference: [plain, scenarioOf()],
  },
  {
    id: 'both-legs-closed',
    on: statusPair,
    does: scenarioOf(),
    instead: { '-H2': 'lit' },
    noDifference: [plain, scenarioOf()],
  },
  {
    id: 'open-contact-followed',
    on: chain,
    does: scenarioOf(),
    instead: { '-H1': 'lit', '-K2': 'operated' },
    noDifference: [plain, scenarioOf()],
  },
  {
    id: 'second-relay-as-drawn',
    on: chain,
    does: scenarioOf('make -B1'),
    instead: { '-H1': 'dark', '-K2': 'rest' },
    noDifference: [interlock, scenarioOf('press -S1')],
  },
  {
    id: 'contacts-beside-coil',
    on: twoSheets,
    does: scenarioOf('make -B1'),
    instead: { '-H2': 'dark' },
    noDifference: [statusPair, scenarioOf('make -B1')],
  },
  {
    id: 'first-pole-only',
    on: twoSheets,
    does: scenarioOf('make -B1'),
    instead: { '-H2': 'dark' },
    noDifference: [statusPair, scenarioOf('make -B1')],
  },
  {
    id: 'seal-forgotten',
    on: sealed,
    does: scenarioOf('press -S1; release -S1'),
    instead: { '-H1': 'dark', '-K1': 'rest' },
    noDifference: [jog, scenarioOf('press -S1; release -S1')],
  },
  {
    id: 'seal-where-none',
    on: jog,
    does: scenarioOf('press -S1; release -S1'),
    instead: { '-H1': 'lit', '-K1': 'operated' },
    noDifference: [sealed, scenarioOf('press -S1; release -S1')],
  },
  {
    id: 'timers-instant',
    on: delayed('on-delay'),
    does: scenarioOf('press -S1; wait 2 s'),
    instead: { '-H1': 'lit', '-K1': 'operated' },
    noDifference: [jog, scenarioOf('press -S1')],
  },
  {
    id: 'delays-exchanged',
    on: delayed('off-delay'),
    does: scenarioOf('press -S1; release -S1; wait 2 s'),
    instead: { '-H1': 'dark', '-K1': 'rest' },
    noDifference: [jog, scenarioOf('press -S1')],
  },
  {
    id: 'latch-drops-out',
    on: latch,
    does: scenarioOf('press -S1; release -S1'),
    instead: { '-H1': 'dark', '-K1': 'rest', '-K1:B1': 'rest' },
    noDifference: [jog, scenarioOf('press -S1')],
  },
  {
    id: 'one-supply',
    on: twoSupplies,
    does: scenarioOf('open -Q1'),
    instead: { '-A1:I1': '0' },
    noDifference: [plain, scenarioOf('open -F1')],
  },
  {
    id: 'line-side-dead',
    on: twoSupplies,
    does: scenarioOf('make -B1; open -Q1'),
    instead: { '-K1': 'rest', '-A1:I1': '1' },
    noDifference: [plain, scenarioOf()],
  },
  {
    id: 'return-ignored',
    on: isolatedReturn,
    does: scenarioOf('', '-H1:X2 broken'),
    instead: { '-H1': 'lit' },
    noDifference: [plain, scenarioOf()],
  },
  {
    id: 'input-inverted',
    on: withBreakInput,
    does: scenarioOf(),
    instead: { '-A1:I1': '0' },
    noDifference: [twoSupplies, scenarioOf()],
  },
  {
    id: 'normal-is-running',
    on: statusPair,
    does: scenarioOf('make -B1'),
    instead: { '-H1': 'lit', '-H2': 'dark', '-K1': 'rest' },
    noDifference: [jog, scenarioOf('press -S1')],
  },
];

describe('a misconception', () => {
  it.each(CASES)('$id gives what somebody with that idea answers', ({ id, on, does, instead }) => {
    const { right, wrong } = read(id, on, does);
    expect(wrong).toEqual({ ...right, ...instead });
    expect(wrong).not.toEqual(right);
  });

  it.each(CASES)('$id is left out where it can make no difference', ({ id, noDifference }) => {
    expect(predict(byId(id), ...noDifference)).toBeUndefined();
    expect(viewOf(byId(id), ...noDifference)).toBeUndefined();
  });

  it('common-reference reads a voltage between two isolated supplies where there is none', () => {
    const wrong = predict(byId('common-reference'), twoSupplies, scenarioOf())!;
    expect(meter(wrong.machine, wrong.state, 'A:L', 'B:L-')).toEqual({ volts: 24, floating: false });
    const machine = machineOf(planOf(twoSupplies));
    expect(meter(machine, play(machine, scenarioOf()).state, 'A:L', 'B:L-').floating).toBe(true);
    expect(predict(byId('common-reference'), plain, scenarioOf())).toBeUndefined();
  });

  it('is covered here, every one of them', () => {
    const covered = [...CASES.map(({ id }) => id), 'common-reference'];
    expect([...covered].sort()).toEqual(MISCONCEPTIONS.map(({ id }) => id).sort());
  });

  it('has words for the learner and names where it is known from', () => {
    for (const { id, idea, advice, source } of MISCONCEPTIONS) {
      expect(id).toMatch(/^[a-z]+(-[a-z]+)+$/);
      expect(idea).toMatch(/^You .*\.$/);
      expect(advice).toMatch(/\.$/);
      expect(['common practice, no source', 'shown by published training texts and forums']).toContain(
        source,
      );
    }
  });

  it('that makes the circuit switch for ever predicts nothing', () => {
    // With its seal read as a break, -K1 would break its own coil.
    const selfHolding = circuitOf(`
supply A 24 V AC
-B1 field-contact make
-K1 relay
-H1 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-14 -K1:A1
A:L -H1:X1-X2 A:N`);
    expect(viewOf(byId('make-for-break'), selfHolding, scenarioOf())).toBeDefined();
    expect(predict(byId('make-for-break'), selfHolding, scenarioOf())).toBeUndefined();
  });

  it('takes over the faults of the scenario', () => {
    const { wrong } = read('make-for-break', statusPair, scenarioOf('make -B1', '-K1:A1-A2 open'));
    expect(wrong).toEqual({ '-H1': 'dark', '-H2': 'lit', '-K1': 'rest' });
  });

  it('predicts the same with and without the machine at hand', () => {
    const scenario = scenarioOf('make -B1');
    const alone = predictAll(chain, scenario);
    const shared = predictAll(chain, scenario, machineOf(planOf(chain)));
    expect(shared.map(({ misconception, state }) => [misconception.id, [...state.at]])).toEqual(
      alone.map(({ misconception, state }) => [misconception.id, [...state.at]]),
    );
    expect(alone.length).toBeGreaterThan(4);
  });

  it('predicts what its changed plan gives when it is compiled afresh', () => {
    for (const { id, on, does } of CASES) {
      const { plan, scenario } = viewOf(byId(id), on, does)!;
      const afresh = machineOf(plan);
      const { machine, state } = predict(byId(id), on, does)!;
      expect(readState(machine, state), id).toEqual(readState(afresh, play(afresh, scenario).state));
    }
  });

  it('does so on fresh circuits of every family, with a machine that has run before', () => {
    let compared = 0;
    for (const { id: family } of families) {
      const made = generate({ seed: 'afresh', family, size: 4 });
      if (!made.ok) continue;
      const { circuit, scenario } = made.accepted.draft;
      const shared = machineOf(planOf(circuit, scenario.faults));
      play(shared, scenario);
      for (const { misconception, machine, state } of predictAll(circuit, scenario, shared)) {
        const view = viewOf(misconception, circuit, scenario)!;
        const afresh = machineOf(view.plan);
        const about = `${family}: ${misconception.id}`;
        expect(readState(machine, state), about).toEqual(
          readState(afresh, play(afresh, view.scenario).state),
        );
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(3 * families.length);
  });
});
