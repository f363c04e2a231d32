/**
 * The fast way against the slow one: islands, evaluated one at a time as contacts move, against the whole network solved
 * afresh. Both are ours; tests/published holds the whole network against an independent voltmeter.
 */
import { describe, expect, it } from 'vitest';
import { type Random, randomOf } from '../../src/generator/random.ts';
import { type Machine, machineOf, planOf, type State, solveNetwork } from '../../src/solver/index.ts';
import { clearCandidates, moved, nothingPending, settleAfter, update } from '../../src/solver/settle.ts';
import { drawn } from '../support/drawn.ts';
import { standAt } from '../support/standing.ts';
import { randomFaults, randomStanding, type TangleOptions, tangle } from '../support/tangle.ts';

/** Loads whose voltage differs between the state and the whole network solved afresh. */
function wrongLoads(machine: Machine, state: State): string[] {
  const network = solveNetwork(machine, state.at, state.supplyOn);
  if (network.shorted.length > 0) return [`short circuit left standing: ${network.shorted}`];
  return machine.plan.loads.flatMap(({ id, a, b, from, to }, load) => {
    const together = network.reference[a] === network.reference[b];
    const whole = network.volts.map((along) => (together ? along[a]! - along[b]! : 0));
    const island = state.volts.map((along) => along[load]!);
    const off = Math.hypot(...whole.map((volts, axis) => volts - island[axis]!));
    return off < 1e-6 ? [] : [`${id} ${from}-${to}: island ${island}, whole ${whole}`];
  });
}

/** Moves one or two mechanisms anywhere they can be, at rest or on their way, and brings the voltages up to date. */
function moveSomething(random: Random, machine: Machine, state: State): void {
  const pending = nothingPending();
  for (let count = random.int(1, 2); count > 0; count--) {
    const mechanism = random.int(0, machine.mechanisms - 1);
    const { positions, drive } = machine.plan.mechanisms[mechanism]!;
    const one = 1 << random.int(0, positions.length - 1);
    const other = drive === 'feed' ? one : 1 << random.int(0, positions.length - 1);
    state.at[mechanism] = random.chance(0.3) ? one | other : one;
    if (drive === 'feed') state.goal[mechanism] = one;
    moved(machine, state, mechanism, pending);
  }
  update(machine, state, pending);
  clearCandidates(machine, pending);
}

/** Commands one of the mechanisms that acts move somewhere, and settles: what only shows is worked out last. */
function actSomehow(random: Random, machine: Machine, state: State): void {
  const acted = machine.plan.mechanisms.flatMap(({ drive }, index) => (drive === 'act' ? [index] : []));
  if (acted.length === 0) return;
  const mechanism = random.pick(acted);
  state.goal[mechanism] = 1 << random.int(0, machine.plan.mechanisms[mechanism]!.positions.length - 1);
  settleAfter(machine, state, [mechanism]);
}

function walk(
  label: string,
  circuits: number,
  options: (index: number) => TangleOptions,
  faults: number,
  step = moveSomething,
): string[] {
  const wrong: string[] = [];
  for (let index = 0; index < circuits; index++) {
    const seed = `${label} ${index}`;
    const random = randomOf(seed);
    const circuit = tangle(random, options(index));
    const machine = machineOf(planOf(circuit, randomFaults(random, circuit, faults)));
    if (machine.mechanisms === 0) continue;
    const state = standAt(machine, randomStanding(random, circuit));
    for (let count = 0; count < 12; count++) {
      wrong.push(...wrongLoads(machine, state).map((text) => `${seed}, step ${count}: ${text}`));
      step(random, machine, state);
    }
  }
  return wrong;
}

describe('islands against the whole network', () => {
  it('agree in 12 states each of 1,500 random circuits with fuses, breakers and isolators, at rest and on the way', () => {
    expect(walk('plain', drawn(1500), (index) => ({ feeds: index % 3 }), 0)).toEqual([]);
  });

  it('agree in 12 states each of 1,000 circuits with two faults', () => {
    expect(walk('faulty', drawn(1000), (index) => ({ feeds: index % 3 }), 2)).toEqual([]);
  });

  it('agree in 12 states each of 500 circuits on three phases', () => {
    const supplies = [{ name: 'A', volts: 400, current: '3AC' as const, earthed: true }];
    expect(walk('phases', drawn(500), (index) => ({ feeds: index % 3, supplies }), 1)).toEqual([]);
  });

  it('agree after each of 12 acts in 1,500 random circuits, settled or without an end', () => {
    expect(walk('settled', drawn(1500), (index) => ({ feeds: index % 3 }), 0, actSomehow)).toEqual([]);
  });
});
