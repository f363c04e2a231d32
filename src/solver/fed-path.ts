/** The way the current takes to a load that has voltage. */
import type { TraceHop } from '../../shared/solution.ts';
import { Heap } from './heap.ts';
import type { Machine } from './machine.ts';
import { isClosed, type Network } from './network.ts';
import type { State } from './state.ts';

/** A way through another supply, or from one to another through earth, is taken where nothing else is left. */
const THROUGH_SUPPLY = 1_000_000;

/** A way through another load (series lamps, a back-feed) is taken only where no closed contacts lead there. */
const THROUGH_LOAD = 1000;

interface Edge {
  readonly node: number;
  readonly cost: number;
  /** Absent where nothing is passed that a path names: a joined pair, the resistance of a dirty contact. */
  readonly hop?: TraceHop;
  /** Index of the load that is passed, or -1. */
  readonly load: number;
  /** Index of the supply that is passed, or -1. */
  readonly supply: number;
}

/** Cheapest ways from one node to all others, each told by the edge it ends with. */
interface Ways {
  readonly cost: Float64Array;
  readonly from: Int32Array;
  readonly by: (Edge | undefined)[];
}

/** What conducts in one state; finds the fed path of each load. */
export class Feeding {
  private readonly machine: Machine;
  private readonly state: State;
  private readonly network: Network;
  private readonly edges: Edge[][];
  private readonly waysOfPole = new Map<number, Ways>();

  constructor(machine: Machine, state: State, network: Network) {
    this.machine = machine;
    this.state = state;
    this.network = network;
    const { plan } = machine;
    this.edges = Array.from({ length: plan.nodes }, () => []);
    const link = (
      a: number,
      b: number,
      cost: number,
      load: number,
      hops?: readonly [TraceHop, TraceHop],
    ): void => {
      this.edges[a]!.push({ node: b, cost, load, supply: -1, ...(hops ? { hop: hops[0] } : {}) });
      this.edges[b]!.push({ node: a, cost, load, supply: -1, ...(hops ? { hop: hops[1] } : {}) });
    };
    const through = (device: string, from: string, to: string): [TraceHop, TraceHop] => [
      { device, enter: from, leave: to },
      { device, enter: to, leave: from },
    ];
    for (const [a, b] of plan.joins) link(a, b, 0, -1);
    plan.switches.forEach(({ a, b, device, from, to }, index) => {
      if (isClosed(machine, state.at, index)) link(a, b, 1, -1, through(device, from, to));
    });
    plan.loads.forEach(({ a, b, device, from, to, role, siemens }, index) => {
      if (siemens === 0) return;
      if (role === 'dirt') link(a, b, 0, index);
      else if (Math.hypot(state.re[index]!, state.im[index]!) > 1e-6)
        link(a, b, THROUGH_LOAD, index, through(device, from, to));
    });
    if (plan.supplies.length > 1) this.linkSupplies();
  }

  private linkSupplies(): void {
    const add = (from: number, to: number, supply: number, hop: TraceHop): void => {
      this.edges[from]!.push({ node: to, cost: THROUGH_SUPPLY, load: -1, supply, hop });
    };
    const { supplies } = this.machine.plan;
    const on = supplies.filter((_, index) => this.state.supplyOn[index]);
    for (const supply of on) {
      const { name, poles } = supply;
      for (const one of poles) {
        for (const other of poles) {
          const hop = { device: name, enter: one.terminal, leave: other.terminal };
          if (one !== other) add(one.node, other.node, supplies.indexOf(supply), hop);
        }
      }
    }
    // Through earth a path only comes to the other return.
    const earthed = on.filter((supply) => supply.earthed);
    for (const one of earthed) {
      for (const other of earthed) {
        const { terminal, node } = other.poles.at(-1)!;
        if (one !== other) add(one.poles.at(-1)!.node, node, -1, { device: other.name, enter: terminal });
      }
    }
  }

  /** Not through a load, nor through the supply whose pole it starts at. */
  private ways(start: number, supply: number, without: number): Ways {
    const size = this.edges.length;
    const cost = new Float64Array(size).fill(Infinity);
    const from = new Int32Array(size).fill(-1);
    const by: (Edge | undefined)[] = new Array(size);
    const heap = new Heap();
    cost[start] = 0;
    heap.push(start, 0);
    for (let top = heap.pop(); top; top = heap.pop()) {
      if (top.cost > cost[top.item]!) continue;
      for (const edge of this.edges[top.item]!) {
        const total = top.cost + edge.cost;
        if (
          (edge.load >= 0 && edge.load === without) ||
          (edge.supply >= 0 && edge.supply === supply) ||
          total >= cost[edge.node]!
        )
          continue;
        cost[edge.node] = total;
        from[edge.node] = top.item;
        by[edge.node] = edge;
        heap.push(edge.node, total);
      }
    }
    return { cost, from, by };
  }

  private fromPole(supply: number, node: number): Ways {
    const key = supply * this.edges.length + node;
    let ways = this.waysOfPole.get(key);
    if (!ways) {
      ways = this.ways(node, supply, -1);
      this.waysOfPole.set(key, ways);
    }
    return ways;
  }

  /** The way from a supply's pole to an end of a load that doesn't go through the load itself; undefined when there is none. */
  private reach(
    supply: number,
    pole: number,
    end: number,
    load: number,
  ): { cost: number; hops: TraceHop[] } | undefined {
    const found = this.walk(this.fromPole(supply, pole), end, load);
    if (found !== 'through') return found;
    // The cheapest way of all went through the load: one without it is looked for.
    const other = this.walk(this.ways(pole, supply, load), end, load);
    return other === 'through' ? undefined : other;
  }

  private walk(
    { cost, from, by }: Ways,
    end: number,
    load: number,
  ): { cost: number; hops: TraceHop[] } | 'through' | undefined {
    if (cost[end] === Infinity) return undefined;
    const hops: TraceHop[] = [];
    for (let node = end, edge = by[node]; edge; node = from[node]!, edge = by[node]) {
      if (edge.load === load) return 'through';
      if (edge.hop) hops.push(edge.hop);
    }
    return { cost: cost[end]!, hops: hops.reverse() };
  }

  /**
   * The path that feeds a load, from a supply's pole through the load to another of its poles, or undefined when no
   * current flows in it.
   */
  path(load: number): TraceHop[] | undefined {
    const { machine, state, network } = this;
    const { plan } = machine;
    const { a, b, device, from, to, siemens, volts } = plan.loads[load]!;
    const across = Math.hypot(state.re[load]!, state.im[load]!);
    if (siemens === 0 || across < 1e-6 * volts) return undefined;
    let best: { cost: number; path: TraceHop[] } | undefined;
    plan.supplies.forEach(({ name, poles }, index) => {
      if (!state.supplyOn[index]) return;
      const ends = poles.map(({ node }) => ({
        a: this.reach(index, node, a, load),
        b: this.reach(index, node, b, load),
      }));
      for (const [one, first] of poles.entries()) {
        for (const [two, second] of poles.entries()) {
          const wayA = ends[one]!.a;
          const wayB = ends[two]!.b;
          if (one === two || !wayA || !wayB) continue;
          // The current runs down the potential, so the pole at `from` is the higher one when the voltage is positive.
          const drop = (network.re[first.node]! - network.re[second.node]!) * state.re[load]!;
          const cost = wayA.cost + wayB.cost;
          if (!machine.phases && drop <= 0 && cost < THROUGH_SUPPLY) continue;
          if (best && best.cost <= cost) continue;
          const path = [
            { device: name, enter: first.terminal },
            ...wayA.hops,
            { device, enter: from, leave: to },
            ...[...wayB.hops].reverse().map(turned),
            { device: name, enter: second.terminal },
          ];
          // Told from the line pole to the return, whichever way round the load is connected.
          best = { cost, path: one === poles.length - 1 ? [...path].reverse().map(turned) : path };
        }
      }
    });
    return best?.path;
  }
}

const turned = ({ device, enter, leave }: TraceHop): TraceHop => ({
  device,
  enter: leave ?? enter,
  ...(leave ? { leave: enter } : {}),
});
