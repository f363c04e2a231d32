/**
 * The whole network at once, exactly: closed contacts and ideal sources join nodes into rigid groups with known
 * differences of potential (a union-find that carries an offset), what is left between the groups is resistors. Slower
 * than the islands and always right: it decides short circuits, joined supplies and meter readings, and the tests
 * hold the islands against it.
 */

import { Joining } from '../graph/index.ts';
import { alongAxis, newVolts } from './axes.ts';
import type { Machine } from './machine.ts';
import type { Evaluated, Network } from './network-solved.ts';
import { NO_VOLTS, Potentials } from './potentials.ts';
import { shortCircuits } from './short-circuits.ts';
import { solveResistors } from './star-mesh.ts';
import type { State } from './state.ts';
import { polesThatHold } from './supplies.ts';

/** Whether a switch is closed in this state. */
export const isClosed = (machine: Machine, at: Uint8Array, index: number): boolean => {
  const mask = machine.closedMask[index]!;
  const mechanism = machine.switchMechanism[index]!;
  return mask !== 0 && (mechanism < 0 || (at[mechanism]! & ~mask) === 0);
};

/** Joins what closed contacts join. */
function joinClosed(machine: Machine, at: Uint8Array): Potentials {
  const { plan } = machine;
  const potentials = new Potentials(machine.axes, plan.nodes);
  for (const [a, b] of plan.joins) potentials.fix(a, b, NO_VOLTS);
  plan.switches.forEach(({ a, b }, index) => {
    if (isClosed(machine, at, index)) potentials.fix(a, b, NO_VOLTS);
  });
  return potentials;
}

/** Lets the supplies hold their poles, and earth the returns of earthed ones; false when something contradicts itself. */
function hold(machine: Machine, potentials: Potentials, supplyOn: Uint8Array): boolean {
  const { plan, axes } = machine;
  let earth = -1;
  let fits = true;
  plan.supplies.forEach((supply, index) => {
    const common = supply.poles.at(-1)!.node;
    for (const pole of polesThatHold(supply, supplyOn[index] === 1))
      fits = potentials.fix(pole.node, common, (axis) => alongAxis(axes, pole, axis)) && fits;
    if (!supply.earthed) return;
    if (earth < 0) earth = common;
    else fits = potentials.fix(common, earth, NO_VOLTS) && fits;
  });
  return fits;
}

/** Solves the network of a state as it stands. Short-circuited supplies are left out of what is solved. */
export function solveNetwork(machine: Machine, at: Uint8Array, supplyOn: Uint8Array): Network {
  const potentials = joinClosed(machine, at);
  if (hold(machine, potentials, supplyOn)) return { ...solveGroups(machine, potentials), shorted: [] };
  const joined = joinClosed(machine, at);
  const shorted = shortCircuits(machine, supplyOn, (node) => joined.find(node));
  const left = supplyOn.slice();
  for (const supply of shorted.flat()) left[supply] = 0;
  hold(machine, joined, left);
  return { ...solveGroups(machine, joined), shorted };
}

/**
 * The resistors between rigid groups. One group of each connected part is its reference, the one that most hangs on; the
 * others are unknown. A resistor sees the difference of two groups plus a fixed one, that of its ends against their roots.
 */
function solveGroups(machine: Machine, potentials: Potentials): Omit<Network, 'shorted'> {
  const { plan, axes } = machine;
  const groupOf = Int32Array.from({ length: plan.nodes }, (_, node) => potentials.find(node));
  const parts = new Joining(plan.nodes);
  const degree = new Int32Array(plan.nodes);
  const links = { a: [] as number[], b: [] as number[], siemens: [] as number[] };
  const extra: number[][] = potentials.volts.map(() => []);
  for (const { a, b, siemens } of plan.loads) {
    const one = groupOf[a]!;
    const other = groupOf[b]!;
    if (siemens === 0 || one === other) continue;
    parts.join(one, other);
    degree[one] = degree[one]! + 1;
    degree[other] = degree[other]! + 1;
    links.a.push(one);
    links.b.push(other);
    links.siemens.push(siemens);
    potentials.volts.forEach((along, axis) => {
      extra[axis]!.push(along[a]! - along[b]!);
    });
  }
  const chosen = new Int32Array(plan.nodes).fill(-1);
  for (const group of [...links.a, ...links.b]) {
    const part = parts.find(group);
    if (chosen[part] === -1 || degree[group]! > degree[chosen[part]!]!) chosen[part] = group;
  }
  const groupVolts = newVolts(axes, plan.nodes);
  const { steps } = solveResistors(
    { ...links, extra },
    (group) => chosen[parts.find(group)] === group,
    groupVolts,
  );
  machine.effort.steps += steps + 4 * (plan.nodes + plan.switches.length + plan.loads.length);
  const volts = potentials.volts.map((along, axis) =>
    along.map((offset, node) => groupVolts[axis]![groupOf[node]!]! + offset),
  );
  const reference = Int32Array.from(groupOf, (group) => parts.find(group));
  return { volts, reference };
}

/** Numbers kept of whole networks; exploring comes to the same standings again and again. */
const MOST_KEPT = 1_000_000;

const standingKey = ({ at, supplyOn }: State): string => {
  let key = '';
  for (const mask of at) key += String.fromCharCode(mask);
  for (const on of supplyOn) key += on;
  return key;
};

function evaluated(machine: Machine, state: State): Evaluated {
  const { loads } = machine.plan;
  const key = standingKey(state);
  const known = machine.networks.get(key);
  if (known) {
    machine.effort.steps += machine.mechanisms + loads.length;
    return known;
  }
  const { volts, reference, shorted } = solveNetwork(machine, state.at, state.supplyOn);
  const across = volts.map((along) =>
    Float64Array.from(loads, ({ a, b }) => (reference[a] === reference[b] ? along[a]! - along[b]! : 0)),
  );
  if (machine.networks.size * (loads.length * volts.length + machine.mechanisms) > MOST_KEPT)
    machine.networks.clear();
  machine.networks.set(key, { volts: across, shorted });
  return { volts: across, shorted };
}

/** Writes the voltages of every load from the whole network; returns the groups of short-circuited supplies. */
export function evaluateWhole(machine: Machine, state: State): Network['shorted'] {
  const { volts, shorted } = evaluated(machine, state);
  for (let axis = 0; axis < volts.length; axis++) state.volts[axis]!.set(volts[axis]!);
  return shorted;
}
