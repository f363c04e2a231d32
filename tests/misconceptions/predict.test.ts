/** Each misconception on a circuit where it gives another result, and on one where it can't. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { MISCONCEPTIONS, predict, predictAll, viewOf } from '../../src/misconceptions/index.ts';
import { machineOf, meter, planOf, play, readState } from '../../src/solver/index.ts';
import {
  AC,
  breaker,
  button,
  circuit,
  DC,
  field,
  inputs,
  isolator,
  lamp,
  latching,
  live,
  make,
  press,
  relay,
  release,
  timer,
  wait,
} from './building.ts';

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

const plain = circuit([breaker('-F1'), lamp('-H1')], ['A:L -F1:1-2 -H1:X1-X2 A:N']);
const statusPair = circuit(
  [breaker('-F1'), field('-B1'), relay('-K1'), lamp('-H1'), lamp('-H2')],
  ['A:L -F1:1-2 -B1:13-14 -K1:A1-A2 A:N', '-F1:2 -K1:11-12 -H1:X1-X2 A:N', '-K1:11-14 -H2:X1-X2 A:N'],
);
const sealed = circuit(
  [button('-S0', 'break'), button('-S1'), relay('-K1', 2), lamp('-H1')],
  ['A:L -S0:21-22 -S1:13-14 -K1:A1-A2 A:N', '-S0:22 -K1:11-14 -S1:14', 'A:L -K1:21-24 -H1:X1-X2 A:N'],
);
const jog = circuit(
  [button('-S1'), relay('-K1'), lamp('-H1')],
  ['A:L -S1:13-14 -K1:A1-A2 A:N', 'A:L -K1:11-14 -H1:X1-X2 A:N'],
);
const chain = circuit(
  [field('-B1'), relay('-K1'), relay('-K2'), lamp('-H1'), lamp('-H2')],
  [
    'A:L -B1:13-14 -K1:A1-A2 A:N',
    'A:L -K1:11-14 -K2:A1-A2 A:N',
    '-K1:12 -H2:X1-X2 A:N',
    'A:L -K2:11-14 -H1:X1-X2 A:N',
  ],
);
const interlock = circuit(
  [button('-S1'), button('-S2'), relay('-K1', 2), relay('-K2', 2), lamp('-H1'), lamp('-H2')],
  [
    'A:L -S1:13-14 -K2:11-12 -K1:A1-A2 A:N',
    'A:L -S2:13-14 -K1:11-12 -K2:A1-A2 A:N',
    'A:L -K1:21-24 -H1:X1-X2 A:N',
    'A:L -K2:21-24 -H2:X1-X2 A:N',
  ],
);
const twoSheets = circuit(
  [field('-B1'), relay('-K1', 2), lamp('-H1'), lamp('-H2')],
  ['A:L -B1:13-14 -K1:A1-A2 A:N', 'A:L -K1:11-14 -H1:X1-X2 A:N', 'sheet 2', 'A:L -K1:21-24 -H2:X1-X2 A:N'],
);
const delayed = (kind: 'on-delay' | 'off-delay') =>
  circuit(
    [button('-S1'), timer(kind, '-K1', 5), lamp('-H1')],
    ['A:L -S1:13-14 -K1:A1-A2 A:N', 'A:L -K1:15-18 -H1:X1-X2 A:N'],
  );
const latch = circuit(
  [button('-S1'), button('-S2'), latching('-K1'), lamp('-H1')],
  ['A:L -S1:13-14 -K1:A1-A2 A:N', 'A:L -S2:13-14 -K1:B1-B2 A:N', 'A:L -K1:11-14 -H1:X1-X2 A:N'],
);
const twoSupplies = circuit(
  [isolator('-Q1'), isolator('-Q2'), field('-B1'), relay('-K1', 2), lamp('-H1'), inputs('-A1', 2)],
  [
    'A:L -Q1:1-2 -K1:11-12 -H1:X1-X2 A:N',
    'A:L -B1:13-14 -K1:A1-A2 A:N',
    'B:L+ -Q2:1-2 -K1:21-22 -A1:I1 ',
    '-A1:COM B:L-',
  ].map((line) => line.trim()),
  [AC, DC],
);
const withBreakInput = circuit(
  [field('-B1', 'break'), field('-B2'), inputs('-A1', 2)],
  ['B:L+ -B1:21-22 -A1:I1', 'B:L+ -B2:13-14 -A1:I2', '-A1:COM B:L-'],
  [DC],
);
const isolatedReturn = circuit([isolator('-Q1', 2), lamp('-H1')], ['A:L -Q1:1-2 -H1:X1-X2 -Q1:4-3 A:N']);

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
    does: live([make('-B1')]),
    instead: { '-H1': 'lit', '-H2': 'dark', '-K1': 'rest' },
    noDifference: [plain, live()],
  },
  {
    id: 'make-for-break',
    on: statusPair,
    does: live([make('-B1')]),
    instead: { '-H1': 'lit', '-H2': 'dark' },
    noDifference: [plain, live()],
  },
  {
    id: 'break-never-opens',
    on: statusPair,
    does: live([make('-B1')]),
    instead: { '-H1': 'lit' },
    noDifference: [plain, live()],
  },
  {
    id: 'both-legs-closed',
    on: statusPair,
    does: live(),
    instead: { '-H2': 'lit' },
    noDifference: [plain, live()],
  },
  {
    id: 'open-contact-followed',
    on: chain,
    does: live(),
    instead: { '-H1': 'lit', '-K2': 'operated' },
    noDifference: [plain, live()],
  },
  {
    id: 'second-relay-as-drawn',
    on: chain,
    does: live([make('-B1')]),
    instead: { '-H1': 'dark', '-K2': 'rest' },
    noDifference: [interlock, live([press('-S1')])],
  },
  {
    id: 'contacts-beside-coil',
    on: twoSheets,
    does: live([make('-B1')]),
    instead: { '-H2': 'dark' },
    noDifference: [statusPair, live([make('-B1')])],
  },
  {
    id: 'first-pole-only',
    on: twoSheets,
    does: live([make('-B1')]),
    instead: { '-H2': 'dark' },
    noDifference: [statusPair, live([make('-B1')])],
  },
  {
    id: 'seal-forgotten',
    on: sealed,
    does: live([press('-S1'), release('-S1')]),
    instead: { '-H1': 'dark', '-K1': 'rest' },
    noDifference: [jog, live([press('-S1'), release('-S1')])],
  },
  {
    id: 'seal-where-none',
    on: jog,
    does: live([press('-S1'), release('-S1')]),
    instead: { '-H1': 'lit', '-K1': 'operated' },
    noDifference: [sealed, live([press('-S1'), release('-S1')])],
  },
  {
    id: 'timers-instant',
    on: delayed('on-delay'),
    does: live([press('-S1'), wait(2)]),
    instead: { '-H1': 'lit', '-K1': 'operated' },
    noDifference: [jog, live([press('-S1')])],
  },
  {
    id: 'delays-exchanged',
    on: delayed('off-delay'),
    does: live([press('-S1'), release('-S1'), wait(2)]),
    instead: { '-H1': 'dark', '-K1': 'rest' },
    noDifference: [jog, live([press('-S1')])],
  },
  {
    id: 'latch-drops-out',
    on: latch,
    does: live([press('-S1'), release('-S1')]),
    instead: { '-H1': 'dark', '-K1': 'rest', '-K1:B1': 'rest' },
    noDifference: [jog, live([press('-S1')])],
  },
  {
    id: 'one-supply',
    on: twoSupplies,
    does: live([{ kind: 'open', device: '-Q1' }]),
    instead: { '-A1:I1': '0' },
    noDifference: [plain, live([{ kind: 'open', device: '-F1' }])],
  },
  {
    id: 'line-side-dead',
    on: twoSupplies,
    does: live([make('-B1'), { kind: 'open', device: '-Q1' }]),
    instead: { '-K1': 'rest', '-A1:I1': '1' },
    noDifference: [plain, live()],
  },
  {
    id: 'return-ignored',
    on: isolatedReturn,
    does: live([], [{ kind: 'loose', at: '-H1:X2' }]),
    instead: { '-H1': 'lit' },
    noDifference: [plain, live()],
  },
  {
    id: 'input-inverted',
    on: withBreakInput,
    does: live(),
    instead: { '-A1:I1': '0' },
    noDifference: [twoSupplies, live()],
  },
  {
    id: 'normal-is-running',
    on: statusPair,
    does: live([make('-B1')]),
    instead: { '-H1': 'lit', '-H2': 'dark', '-K1': 'rest' },
    noDifference: [jog, live([press('-S1')])],
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
    const wrong = predict(byId('common-reference'), twoSupplies, live())!;
    expect(meter(wrong.machine, wrong.state, 'A:L', 'B:L-')).toEqual({ volts: 24, floating: false });
    const machine = machineOf(planOf(twoSupplies));
    expect(meter(machine, play(machine, live()).state, 'A:L', 'B:L-').floating).toBe(true);
    expect(predict(byId('common-reference'), plain, live())).toBeUndefined();
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
    const selfHolding = circuit(
      [field('-B1'), relay('-K1'), lamp('-H1')],
      ['A:L -B1:13-14 -K1:A1-A2 A:N', 'A:L -K1:11-14 -K1:A1', 'A:L -H1:X1-X2 A:N'],
    );
    expect(viewOf(byId('make-for-break'), selfHolding, live())).toBeDefined();
    expect(predict(byId('make-for-break'), selfHolding, live())).toBeUndefined();
  });

  it('takes over the faults of the scenario', () => {
    const fault = { kind: 'open', from: '-K1:A1', to: '-K1:A2' } as const;
    const { wrong } = read('make-for-break', statusPair, live([make('-B1')], [fault]));
    expect(wrong).toEqual({ '-H1': 'dark', '-H2': 'lit', '-K1': 'rest' });
  });

  it('predicts the same with and without the machine at hand', () => {
    const scenario = live([make('-B1')]);
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
});
