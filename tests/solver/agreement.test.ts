/**
 * The solver's several ways to an answer against one another: waves, every order, the run in time, the readings. And the
 * laws that any answer keeps: what flows in flows out, and the same question has the same answer.
 */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { type Random, randomOf } from '../../src/generator/random.ts';
import {
  begin,
  copyState,
  doAct,
  everyBeginning,
  everyOutcome,
  machineOf,
  onlyState,
  planOf,
  play,
  restoreState,
  runTimed,
  type Standing,
  type State,
  solve,
  solveNetwork,
} from '../../src/solver/index.ts';
import { atLeast, drawn } from '../support/drawn.ts';
import { standAt } from '../support/standing.ts';
import { randomStanding, tangle } from '../support/tangle.ts';

const SUPPLY = [{ name: 'A', volts: 24, current: 'DC' as const, earthed: false }];

const circuitOf = (random: Random): Circuit =>
  tangle(random, {
    supplies: SUPPLY,
    volts: [24],
    relays: random.int(2, 6),
    loads: random.int(1, 4),
    junctions: random.int(2, 6),
    feeds: random.int(0, 2),
  });

function actsOf(random: Random, circuit: Circuit): Act[] {
  const possible = circuit.devices.flatMap(({ kind, name }): Act[] => {
    switch (kind) {
      case 'push-button':
        return [
          { kind: 'press', device: name },
          { kind: 'release', device: name },
        ];
      case 'selector':
        return ['Off', 'Hand', 'Auto'].map((to) => ({ kind: 'turn', device: name, to }));
      case 'isolator':
        return [
          { kind: 'open', device: name },
          { kind: 'close', device: name },
        ];
      case 'relay':
        return [
          { kind: 'hold', device: name },
          { kind: 'free', device: name },
        ];
      default:
        return [];
    }
  });
  return [
    ...random.sample(possible, Math.min(4, possible.length)),
    { kind: 'wait', seconds: random.pick([2, 6]) },
    ...random.sample(possible, Math.min(2, possible.length)),
  ];
}

const positions = ({ at, supplyOn }: State): string => `${at.join()} ${supplyOn.join()}`;

const standingAfter = (
  circuit: Circuit,
  acts: readonly Act[],
): { standing: Standing; state: State; steady: boolean } => {
  const machine = machineOf(planOf(circuit));
  let standing = everyBeginning(machine, 'live');
  for (const act of acts) standing = everyOutcome(machine, standing, act);
  return { standing, ...play(machine, { start: 'live', acts: [...acts] }) };
};

interface Question {
  readonly seed: string;
  readonly circuit: Circuit;
  readonly acts: readonly Act[];
}

const questions = (label: string, count: number): Question[] =>
  Array.from({ length: count }, (_, index) => {
    const seed = `${label} ${index}`;
    const random = randomOf(seed);
    const circuit = circuitOf(random);
    return { seed, circuit, acts: actsOf(random, circuit) };
  });

describe('moving in waves', () => {
  it('ends in one of the endings that all orders have, in 1,500 random scenarios', () => {
    let settled = 0;
    for (const { seed, circuit, acts } of questions('waves', drawn(1500))) {
      const { standing, state, steady } = standingAfter(circuit, acts);
      if (!steady || !standing.complete) continue;
      const resting = standing.endings
        .filter(({ states }) => states.length === 1)
        .map(({ states }) => positions(states[0]!));
      expect(resting, seed).toContain(positions(state));
      settled++;
    }
    expect(settled).toBeGreaterThan(atLeast(1000));
  });
});

describe('the run in time', () => {
  it('ends in the only state there is, where there is only one, in 1,500 random scenarios', () => {
    let compared = 0;
    for (const { seed, circuit, acts } of questions('timed', drawn(1500))) {
      const machine = machineOf(planOf(circuit));
      let standing = everyBeginning(machine, 'live');
      for (const act of acts) standing = everyOutcome(machine, standing, act);
      const only = onlyState(machine, standing);
      if (!only) continue;
      const { state, rested } = runTimed(machine, { start: 'live', acts: [...acts] });
      // An act that it gave up on, because the circuit kept switching, leaves it somewhere on the way.
      if (!rested) continue;
      expect(positions(state), seed).toBe(positions(only));
      compared++;
    }
    expect(compared).toBeGreaterThan(atLeast(1000));
  });

  it('tells each mechanism as leaving and arriving in turn, and ends where it last arrived', () => {
    for (const { seed, circuit, acts } of questions('told', drawn(300))) {
      const machine = machineOf(planOf(circuit));
      const { happenings, state, rested } = runTimed(machine, { start: 'live', acts: [...acts] });
      if (!rested) continue;
      machine.plan.mechanisms.forEach(({ id, drive, positions: names }, mechanism) => {
        if (drive === 'feed') return;
        const own = happenings.filter(
          ({ device, what }) => device === id && (what === 'leaves' || what === 'arrives'),
        );
        own.forEach(({ what }, index) => {
          expect(what, seed).toBe(index % 2 === 0 ? 'leaves' : 'arrives');
        });
        const last = own.at(-1);
        expect(names[31 - Math.clz32(state.at[mechanism]!)], seed).toBe(last ? last.to : names[0]);
      });
    }
  });
});

describe('a solution', () => {
  it('is the same each time, whatever the machine has done before, in 300 random scenarios', () => {
    for (const { seed, circuit, acts } of questions('again', drawn(300))) {
      const scenario = { start: 'live' as const, faults: [], acts: [...acts] };
      expect(JSON.stringify(solve(circuit, scenario).solution), seed).toBe(
        JSON.stringify(solve(circuit, scenario).solution),
      );
      const machine = machineOf(planOf(circuit));
      const fresh = play(machine, scenario).state;
      const rest = begin(machine, 'live');
      const work = copyState(rest);
      for (let round = 0; round < 2; round++) {
        restoreState(work, rest);
        for (const act of acts) doAct(machine, work, act);
        expect([positions(work), work.volts.map(String)], seed).toEqual([
          positions(fresh),
          fresh.volts.map(String),
        ]);
      }
    }
  });
});

describe("Kirchhoff's current law", () => {
  it('holds at every conductor of 1,000 random circuits: what loads bring, contacts and sources take away', () => {
    for (let index = 0; index < drawn(1000); index++) {
      const random = randomOf(`kirchhoff ${index}`);
      const phases = index % 4 === 0;
      const circuit = tangle(random, {
        feeds: 1,
        ...(phases ? { supplies: [{ name: 'A', volts: 400, current: '3AC' as const, earthed: true }] } : {}),
      });
      const machine = machineOf(planOf(circuit));
      const state = standAt(machine, randomStanding(random, circuit));
      const { plan } = machine;
      const network = solveNetwork(machine, state.at, state.supplyOn);
      // Sources keep what they give within their own system, so its poles are left out.
      const group = new Map<number, number>();
      const find = (node: number): number => {
        let at = node;
        for (let next = group.get(at); next !== undefined; next = group.get(at)) at = next;
        return at;
      };
      const join = (a: number, b: number): void => {
        if (find(a) !== find(b)) group.set(find(a), find(b));
      };
      plan.switches.forEach(({ a, b, closedIn, fixed, mechanism }) => {
        const mask = mechanism < 0 ? 0 : state.at[mechanism]!;
        const closed = [0, 1, 2, 3, 4, 5].every((at) => (mask & (1 << at)) === 0 || closedIn.includes(at));
        if (fixed === undefined && closed) join(a, b);
      });
      plan.supplies.forEach(({ poles }, supply) => {
        if (state.supplyOn[supply]) for (const { node } of poles) join(node, poles[0]!.node);
      });
      const earthed = plan.supplies.filter((supply) => supply.earthed);
      for (const { poles } of earthed) join(poles.at(-1)!.node, earthed[0]!.poles.at(-1)!.node);
      const flows = new Map<number, { amps: number[]; size: number }>();
      for (const { a, b, siemens } of plan.loads) {
        const amps = network.volts.map((along) => siemens * (along[a]! - along[b]!));
        for (const [node, sign] of [
          [a, 1],
          [b, -1],
        ] as const) {
          const sum = flows.get(find(node)) ?? { amps: amps.map(() => 0), size: 0 };
          flows.set(find(node), {
            amps: sum.amps.map((before, axis) => before + sign * amps[axis]!),
            size: sum.size + Math.hypot(...amps),
          });
        }
      }
      for (const { amps, size } of flows.values())
        expect(Math.hypot(...amps), `kirchhoff ${index}`).toBeLessThan(1e-9 * (1 + size));
    }
  });
});
