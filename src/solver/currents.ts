/**
 * Where current flows in one state, seen along one direction of the voltages' space: voltages and currents projected onto it
 * still obey Ohm's and Kirchhoff's laws, so an alternating current is looked at as at the moment when it is greatest in
 * the load that is asked about. What flows in a supply follows from what flows in the loads; in a ring of supplies
 * (two in parallel) how they share is open, and each may give.
 */

import { Joining } from '../graph/index.ts';
import { alongAxis, type Volts } from './axes.ts';
import type { Machine } from './machine.ts';
import type { Network } from './network-solved.ts';
import type { State } from './state.ts';

export interface Currents {
  /** Amperes through each load from its `a` to its `b`. */
  readonly through: Float64Array;
  /** Amperes that each pole gives into the circuit, by supply and pole; in a ring infinite with the sign it may have. */
  readonly given: readonly (readonly number[])[];
  /** Volts of each pole against its supply's return. */
  readonly potentials: readonly (readonly number[])[];
  /** Amperes from earth into the return of each supply; in a ring infinite, for either sign. */
  readonly fromEarth: readonly number[];
}

interface Edge {
  /** The net that current comes to, and the one it comes from, when it is positive. */
  readonly to: number;
  readonly from: number;
  readonly supply: number;
  /** -1: a bond to earth. */
  readonly pole: number;
  /** In a ring: the sign the current may have, 0 for either. */
  readonly likely: -1 | 0 | 1;
}

/** The currents of a solved state along a direction, a unit vector over the machine's axes. */
export function currentsAlong(
  machine: Machine,
  state: State,
  { volts }: Network,
  netOf: (node: number) => number,
  direction: readonly number[],
): Currents {
  const { plan } = machine;
  const across = (a: number, b: number): number => project(volts, direction, a, b);
  const through = new Float64Array(plan.loads.length);
  const demand = new Map<number, number>();
  const draw = (net: number, amps: number): void => {
    demand.set(net, (demand.get(net) ?? 0) + amps);
  };
  plan.loads.forEach(({ a, b, siemens }, load) => {
    const tied = state.volts.every((along) => along[load] === 0);
    const amps = tied ? 0 : siemens * across(a, b);
    through[load] = amps;
    draw(netOf(a), amps);
    draw(netOf(b), -amps);
  });
  const potentials = plan.supplies.map(({ poles }) =>
    poles.map((pole) =>
      direction.reduce((sum, part, axis) => sum + part * alongAxis(machine.axes, pole, axis), 0),
    ),
  );
  const edges = edgesOf(machine, state, netOf, potentials);
  const amps = solveTree(edges, demand, plan.nodes + 1);
  const given = plan.supplies.map(({ poles }) => poles.map(() => 0));
  const fromEarth = plan.supplies.map(() => 0);
  edges.forEach(({ supply, pole }, index) => {
    if (pole < 0) {
      fromEarth[supply] = amps[index]!;
      return;
    }
    const own = given[supply]!;
    own[pole] = amps[index]!;
    own[own.length - 1]! -= amps[index]!;
  });
  return { through, given, potentials, fromEarth };
}

function project(volts: Volts, direction: readonly number[], a: number, b: number): number {
  let sum = 0;
  for (let axis = 0; axis < volts.length; axis++)
    sum += direction[axis]! * (volts[axis]![a]! - volts[axis]![b]!);
  return sum;
}

function edgesOf(
  { plan }: Machine,
  { supplyOn }: State,
  netOf: (node: number) => number,
  potentials: readonly (readonly number[])[],
): Edge[] {
  return plan.supplies.flatMap(({ poles, earthed }, supply): Edge[] => {
    const common = netOf(poles.at(-1)!.node);
    const bond: Edge = { to: common, from: plan.nodes, supply, pole: -1, likely: 0 };
    const own = supplyOn[supply] ? poles.slice(0, -1) : [];
    return [
      ...own.map((pole, index): Edge => {
        const volts = potentials[supply]![index]!;
        return {
          to: netOf(pole.node),
          from: common,
          supply,
          pole: index,
          likely: volts > 0 ? 1 : volts < 0 ? -1 : 0,
        };
      }),
      ...(earthed ? [bond] : []),
    ];
  });
}

/** Currents of the edges so that each net gets what is drawn from it; those that only close a ring are infinite. */
function solveTree(edges: readonly Edge[], demand: ReadonlyMap<number, number>, nets: number): number[] {
  const joining = new Joining(nets);
  const at = new Map<number, number[]>();
  const amps = edges.map(({ to, from, likely }, index) => {
    if (!joining.join(to, from)) return likely === 0 ? Number.NaN : likely * Infinity;
    for (const end of [to, from]) at.set(end, [...(at.get(end) ?? []), index]);
    return 0;
  });
  const seen = new Set<number>();
  for (const root of at.keys()) {
    if (seen.has(root)) continue;
    seen.add(root);
    const order: { net: number; by: number }[] = [{ net: root, by: -1 }];
    for (const { net } of order) {
      for (const index of at.get(net) ?? []) {
        const { to, from } = edges[index]!;
        const other = to === net ? from : to;
        if (seen.has(other)) continue;
        seen.add(other);
        order.push({ net: other, by: index });
      }
    }
    // From the leaves back: what the nets beyond an edge draw comes through it.
    const drawn = new Map(order.map(({ net }) => [net, demand.get(net) ?? 0]));
    for (const { net, by } of order.reverse()) {
      if (by < 0) continue;
      const { to, from } = edges[by]!;
      const beyond = drawn.get(net)!;
      amps[by] = to === net ? beyond : -beyond;
      const other = to === net ? from : to;
      drawn.set(other, drawn.get(other)! + beyond);
    }
  }
  return amps;
}
