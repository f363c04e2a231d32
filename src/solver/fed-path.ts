/** The way the current takes to a load that has voltage. */
import type { TraceHop } from '../../shared/solution.ts';
import type { Machine } from './machine.ts';
import { isClosed, type Network } from './network.ts';
import type { State } from './state.ts';

interface Way {
  readonly cost: number;
  /** From the node back towards where the search began. */
  readonly hops: readonly TraceHop[];
}

/** A way through another load (series lamps, a back-feed) is taken only where no closed contacts lead there. */
const THROUGH_LOAD = 1000;

interface Edge {
  readonly node: number;
  readonly cost: number;
  readonly hop: TraceHop | undefined;
}

function edgesOf(machine: Machine, state: State, without: number): Map<number, Edge[]> {
  const edges = new Map<number, Edge[]>();
  const link = (
    a: number,
    b: number,
    cost: number,
    device: string,
    from: string,
    to: string,
    shown: boolean,
  ): void => {
    const hop = (enter: string, leave: string): TraceHop | undefined =>
      shown ? { device, enter, leave } : undefined;
    for (const [one, other, through] of [
      [a, b, hop(from, to)],
      [b, a, hop(to, from)],
    ] as const) {
      const list = edges.get(one);
      const edge = { node: other, cost, hop: through };
      if (list) list.push(edge);
      else edges.set(one, [edge]);
    }
  };
  const { plan } = machine;
  for (const [a, b] of plan.joins) link(a, b, 0, '', '', '', false);
  plan.switches.forEach(({ a, b, device, from, to }, index) => {
    if (isClosed(machine, state.at, index)) link(a, b, 1, device, from, to, true);
  });
  plan.loads.forEach(({ a, b, device, from, to, role, siemens }, index) => {
    if (index === without || siemens === 0) return;
    if (role === 'dirt') link(a, b, 0, device, from, to, false);
    else if (Math.hypot(state.re[index]!, state.im[index]!) > 1e-6)
      link(a, b, THROUGH_LOAD, device, from, to, true);
  });
  return edges;
}

/** Cheapest ways from one node to all others (Dijkstra; circuits are small and weights two). */
function waysFrom(edges: ReadonlyMap<number, readonly Edge[]>, start: number): Map<number, Way> {
  const ways = new Map<number, Way>([[start, { cost: 0, hops: [] }]]);
  const done = new Set<number>();
  for (;;) {
    let here: number | undefined;
    for (const [node, way] of ways) {
      if (!done.has(node) && (here === undefined || way.cost < ways.get(here)!.cost)) here = node;
    }
    if (here === undefined) return ways;
    done.add(here);
    const { cost, hops } = ways.get(here)!;
    for (const edge of edges.get(here) ?? []) {
      const known = ways.get(edge.node);
      if (known && known.cost <= cost + edge.cost) continue;
      ways.set(edge.node, { cost: cost + edge.cost, hops: edge.hop ? [...hops, edge.hop] : hops });
    }
  }
}

const turned = ({ device, enter, leave }: TraceHop): TraceHop => ({
  device,
  enter: leave ?? enter,
  ...(leave ? { leave: enter } : {}),
});

/**
 * The path that feeds a load, from a supply's pole through the load to another of its poles, or undefined when no
 * current flows in it.
 */
export function fedPath(
  machine: Machine,
  state: State,
  network: Network,
  load: number,
): TraceHop[] | undefined {
  const { plan } = machine;
  const { a, b, device, from, to, siemens, volts } = plan.loads[load]!;
  const across = Math.hypot(state.re[load]!, state.im[load]!);
  if (siemens === 0 || across < 1e-6 * volts) return undefined;
  const edges = edgesOf(machine, state, load);
  const fromA = waysFrom(edges, a);
  const fromB = waysFrom(edges, b);
  let best: { cost: number; path: TraceHop[] } | undefined;
  plan.supplies.forEach(({ name, poles }, index) => {
    if (!state.supplyOn[index]) return;
    for (const [one, first] of poles.entries()) {
      for (const [two, second] of poles.entries()) {
        if (one === two) continue;
        const wayA = fromA.get(first.node);
        const wayB = fromB.get(second.node);
        if (!wayA || !wayB) continue;
        // The current runs down the potential, so the pole at `from` is the higher one when the voltage is positive.
        const drop = (network.re[first.node]! - network.re[second.node]!) * state.re[load]!;
        if (!machine.phases && drop <= 0) continue;
        const cost = wayA.cost + wayB.cost;
        if (best && best.cost <= cost) continue;
        const path = [
          { device: name, enter: first.terminal },
          ...[...wayA.hops].reverse().map(turned),
          { device, enter: from, leave: to },
          ...wayB.hops,
          { device: name, enter: second.terminal },
        ];
        // Told from the line pole to the return, whichever way round the load is connected.
        best = { cost, path: one === poles.length - 1 ? [...path].reverse().map(turned) : path };
      }
    }
  });
  return best?.path;
}
