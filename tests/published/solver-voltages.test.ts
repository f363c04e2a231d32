/**
 * The solver against an independent voltmeter: eecircuit-engine 1.8, a general circuit analysis library. Circuits are
 * turned into netlists by tests/support/wiring.ts, which shares no code with the solver. Direct voltages are its operating
 * point, alternating ones its AC analysis, single-phase and three-phase, also of circuits that have both.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Circuit, Supply } from '../../shared/circuit.ts';
import type { Fault } from '../../shared/scenario.ts';
import { randomOf } from '../../src/generator/random.ts';
import { type Machine, machineOf, planOf, solveNetwork } from '../../src/solver/index.ts';
import { standAt } from '../support/standing.ts';
import { isShorted, randomFaults, randomStanding, type TangleOptions, tangle } from '../support/tangle.ts';
import { type Measured, type Parts, Voltmeter } from '../support/voltmeter.ts';
import { type Standing, type Wiring, wiringOf } from '../support/wiring.ts';

interface Case {
  readonly seed: string;
  readonly circuit: Circuit;
  readonly faults: readonly Fault[];
  readonly standing: Standing;
  readonly failed: readonly string[];
  readonly wiring: Wiring;
}

/** Relative 0.1 %; the bleeders that ground every net are worth some hundred microvolts. */
const agrees = (ours: number, theirs: number): boolean =>
  Math.abs(ours - theirs) <= 1e-3 * Math.abs(theirs) + 2e-3;

let meter: Voltmeter;
beforeAll(async () => {
  meter = await new Voltmeter().start();
});

/** `wanted` cases without a short circuit; how many were passed over because of one is counted too. */
function makeCases(
  label: string,
  wanted: number,
  options: (index: number) => TangleOptions & { faults: number; failed?: boolean },
) {
  const cases: Case[] = [];
  const shorted: Case[] = [];
  for (let index = 0; cases.length < wanted; index++) {
    const seed = `${label} ${index}`;
    const random = randomOf(seed);
    const { faults: count, failed: mayFail = false, ...rest } = options(index);
    const circuit = tangle(random, rest);
    const faults = randomFaults(random, circuit, count);
    const standing = randomStanding(random, circuit);
    const failed = mayFail && random.chance(0.5) ? [random.pick(circuit.supplies).name] : [];
    const wiring = wiringOf(circuit, faults, standing, failed);
    (isShorted(wiring) ? shorted : cases).push({ seed, circuit, faults, standing, failed, wiring });
  }
  return { cases, shorted };
}

/** Ours along the axes that a machine has, as direct, real and imaginary part. */
const partsOf = ({ axes }: Machine, along: (axis: number) => number): Parts => {
  const part = (axis: number): number => (axis < 0 ? 0 : along(axis));
  return [part(axes.direct), part(axes.inPhase), part(axes.quadrature)];
};

const NOTHING: Parts = [0, 0, 0];

/** What differs between the solver and the voltmeter in one case, in words. */
function differences(
  { seed, circuit, faults, standing, failed, wiring }: Case,
  measured: Measured,
): string[] {
  const machine = machineOf(planOf(circuit, faults));
  const state = standAt(machine, standing, failed);
  const found: string[] = [];
  if (state.shorted.length + state.tripped.length > 0) return [`${seed}: the solver sees a short circuit`];
  const network = solveNetwork(machine, state.at, state.supplyOn);
  const say = (what: string, ours: Parts, theirs: Parts): void => {
    if (!ours.every((volts, part) => agrees(volts, theirs[part]!)))
      found.push(`${seed}: ${what}: ours ${ours}, measured ${theirs}`);
  };
  machine.plan.loads.forEach(({ device, from, to, role }, load) => {
    const [a, b] = [`${device}:${from}`, `${device}:${to}`];
    if (role === 'dirt') return;
    const theirs = measured.together(a, b) ? measured.between(a, b) : NOTHING;
    say(
      `${a} to ${b}`,
      partsOf(machine, (axis) => state.volts[axis]![load]!),
      theirs,
    );
  });
  // Every node against the first one of its part.
  const firsts = new Map<number, string>();
  for (const terminal of wiring.terminals) {
    const node = machine.plan.nodeOf.get(terminal)!;
    const part = network.reference[node]!;
    const first = firsts.get(part);
    if (first === undefined) firsts.set(part, terminal);
    else if (!measured.together(first, terminal)) found.push(`${seed}: ${first} and ${terminal} are apart`);
    else {
      const other = machine.plan.nodeOf.get(first)!;
      say(
        `${terminal} against ${first}`,
        partsOf(machine, (axis) => network.volts[axis]![node]! - network.volts[axis]![other]!),
        measured.between(terminal, first),
      );
    }
  }
  const parts = [...firsts.values()];
  for (const [index, one] of parts.entries())
    for (const other of parts.slice(index + 1))
      if (measured.together(one, other)) found.push(`${seed}: ${one} and ${other} are not apart`);
  return found;
}

async function compare(cases: readonly Case[]): Promise<string[]> {
  const found: string[] = [];
  const BATCH = 60;
  for (let start = 0; start < cases.length; start += BATCH) {
    const batch = cases.slice(start, start + BATCH);
    const measured = await meter.measure(batch.map(({ wiring }) => wiring));
    batch.forEach((one, index) => {
      found.push(...differences(one, measured[index]!));
    });
  }
  return found;
}

const threePhase = (earthed: boolean): Supply => ({ name: 'A', volts: 400, current: '3AC', earthed });

describe('voltages against eecircuit-engine', () => {
  it('agree to 0.1 % in 700 random circuits: series loads, back-feeds, broken commons, one or two supplies', async () => {
    const { cases, shorted } = makeCases('sound', 700, () => ({ faults: 0 }));
    expect(await compare(cases)).toEqual([]);
    expect(shorted.length).toBeGreaterThan(20);
  });

  it('agree to 0.1 % in 500 circuits with one to three faults: dirty contacts, open and shorted coils, loose and crossed conductors, welds', async () => {
    const { cases } = makeCases('faulty', 500, (index) => ({ faults: 1 + (index % 3) }));
    const kinds = new Set(cases.flatMap(({ faults }) => faults.map(({ kind }) => kind)));
    expect([...kinds].sort()).toEqual(['crossed', 'cut', 'dirty', 'loose', 'open', 'shorted', 'welded']);
    expect(await compare(cases)).toEqual([]);
  });

  it('agree to 0.1 % in 200 circuits on three phases, real and imaginary part', async () => {
    const { cases } = makeCases('phases', 200, (index) => ({
      faults: index % 3 === 0 ? 1 : 0,
      supplies: [threePhase(index % 2 === 0)],
    }));
    expect(await compare(cases)).toEqual([]);
  });

  it('agree to 0.1 % in 60 circuits of 40 to 60 loads that all hang on one another', async () => {
    const { cases } = makeCases('large', 60, (index) => ({
      faults: 2,
      relays: 20 + (index % 10),
      loads: 25 + (index % 20),
      junctions: 30,
      density: 0.25,
    }));
    expect(await compare(cases)).toEqual([]);
  });

  it('agree to 0.1 % in 5,000 circuits of direct and alternating supplies together, earthed, failed and with faults to earth', async () => {
    const { cases, shorted } = makeCases('mixed', 5000, (index) => {
      const random = randomOf(`mixed supplies ${index}`);
      const supplies = ['A', 'B', 'C'].slice(0, random.int(2, 3)).map((name, at): Supply => {
        const current = at === 0 ? 'DC' : at === 1 ? 'AC' : random.pick(['AC', 'DC', '3AC'] as const);
        return { name, volts: random.pick([12, 24, 110, 230]), current, earthed: random.chance(0.6) };
      });
      return { faults: index % 3, failed: true, earthFault: index % 4 === 0, supplies };
    });
    expect(await compare(cases)).toEqual([]);
    const both = cases.filter(({ circuit, failed }) => {
      const on = circuit.supplies.filter(({ name }) => !failed.includes(name));
      return on.some(({ current }) => current === 'DC') && on.some(({ current }) => current !== 'DC');
    });
    expect(both.length).toBeGreaterThan(2000);
    expect(cases.filter(({ failed }) => failed.length > 0).length).toBeGreaterThan(1000);
    expect(shorted.length).toBeGreaterThan(100);
  });

  it('a short circuit is one for both: no state of 300 shorted ones is taken for sound', () => {
    const { shorted } = makeCases('sound', 4000, () => ({ faults: 0 }));
    expect(shorted.length).toBeGreaterThanOrEqual(300);
    const missed = shorted.filter(({ circuit, standing }) => {
      const machine = machineOf(planOf(circuit));
      const state = standAt(machine, standing);
      return state.shorted.length + state.tripped.length === 0;
    });
    expect(missed.map(({ seed }) => seed)).toEqual([]);
  });
});
