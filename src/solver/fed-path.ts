/**
 * The way the current takes to a load that has voltage: a round of the circuit that current flows along everywhere, from a
 * pole of a supply through the load and back to another of its poles. What flows in a network is made of such rounds, so
 * there is one through every load that carries current.
 */
import type { TraceHop } from '../../shared/solution.ts';
import { Joining } from '../graph/index.ts';
import { partsOfVolts } from './axes.ts';
import { type Currents, currentsAlong } from './currents.ts';
import { Heap } from './heap.ts';
import type { Machine } from './machine.ts';
import { isClosed } from './network.ts';
import type { Network } from './network-solved.ts';
import type { State } from './state.ts';

/** A way through another supply, or from one to another through earth, is taken where nothing else is left. */
const THROUGH_SUPPLY = 1_000_000;

/** A pole ends a way; one that leads past it on the same conductor is told only where no other is left. */
const PAST_POLE = 100_000;

/** A way through another load (series lamps, a back-feed) is taken only where no closed contacts lead there. */
const THROUGH_LOAD = 1000;

/** A relay's own contact holds it; where something else feeds it as well, that is what it operated by. */
const THROUGH_OWN_CONTACT = 100;

/** Currents below this share of the load's own are rounding. */
const SHARE = 1e-6;

interface Edge {
  readonly to: number;
  readonly cost: number;
  /** What a path names of it; absent for a joined pair, or the resistance of a dirty contact. */
  readonly hops?: readonly TraceHop[];
  /** Whether the current may take it, in amperes along it; absent: contacts carry whatever comes. */
  readonly amps?: (currents: Currents) => number;
  /** Where a supply is passed: the poles it is entered and left at. */
  readonly passes?: { readonly supply: string; readonly enter: string; readonly leave: string };
}

const turned = ({ device, enter, leave }: TraceHop): TraceHop => ({
  device,
  enter: leave ?? enter,
  ...(leave ? { leave: enter } : {}),
});

/** A bare terminal on the way that its neighbour names too is left out. */
const withoutRepeats = (path: readonly TraceHop[]): TraceHop[] =>
  path.filter(({ device, enter, leave }, index) => {
    if (leave !== undefined || index === 0 || index === path.length - 1) return true;
    return ![path[index - 1]!, path[index + 1]!].some(
      (other) => other.device === device && [other.enter, other.leave].includes(enter),
    );
  });

/** What conducts in one state; finds the fed path of each load. */
export class Feeding {
  private readonly machine: Machine;
  private readonly state: State;
  private readonly network: Network;
  private readonly net: Joining;
  /** By node; a pole has a second place, `past`, where a way has come out of its supply. */
  private readonly edges: Edge[][];
  private readonly past = new Map<number, number>();
  private readonly known = new Map<string, Currents>();

  constructor(machine: Machine, state: State, network: Network) {
    this.machine = machine;
    this.state = state;
    this.network = network;
    const { plan } = machine;
    this.net = new Joining(plan.nodes);
    this.edges = Array.from({ length: plan.nodes }, () => []);
    plan.supplies.forEach(({ poles }, index) => {
      for (const { node } of poles)
        if (state.supplyOn[index] && !this.past.has(node)) this.past.set(node, this.edges.push([]) - 1);
    });
    this.linkParts();
    this.linkSupplies();
    for (const [node, past] of this.past) this.edges[node]!.push({ to: past, cost: PAST_POLE });
  }

  /** Where ways go on from a node by contacts and loads. */
  private on(node: number): Edge[] {
    return this.edges[this.past.get(node) ?? node]!;
  }

  private linkParts(): void {
    const { machine, state, net } = this;
    const { plan } = machine;
    const link = (a: number, b: number, edge: Omit<Edge, 'to'>, back: Omit<Edge, 'to'>): void => {
      this.on(a).push({ to: b, ...edge });
      this.on(b).push({ to: a, ...back });
    };
    for (const [a, b] of plan.joins) {
      net.join(a, b);
      link(a, b, { cost: 0 }, { cost: 0 });
    }
    plan.switches.forEach(({ a, b, device, from, to }, index) => {
      if (!isClosed(machine, state.at, index)) return;
      net.join(a, b);
      const hop = { device, enter: from, leave: to };
      link(a, b, { cost: 1, hops: [hop] }, { cost: 1, hops: [turned(hop)] });
    });
    plan.loads.forEach(({ a, b, device, from, to, role, siemens }, index) => {
      if (siemens === 0) return;
      const hop = { device, enter: from, leave: to };
      const dirt = role === 'dirt';
      const cost = dirt ? 0 : THROUGH_LOAD;
      link(
        a,
        b,
        { cost, amps: ({ through }) => through[index]!, ...(dirt ? {} : { hops: [hop] }) },
        { cost, amps: ({ through }) => -through[index]!, ...(dirt ? {} : { hops: [turned(hop)] }) },
      );
    });
  }

  /**
   * Through a supply from a pole that takes current to one that gives it, and through earth from return to return. Where
   * a supply has phases their currents add up to less in the neutral, or to nothing; what comes to it ends there all the same.
   */
  private linkSupplies(): void {
    const { machine, state, past } = this;
    const { supplies } = machine.plan;
    const enter = (from: number, edge: Edge): void => {
      this.edges[from]!.push(edge);
      const beyond = past.get(from);
      if (beyond !== undefined) this.edges[beyond]!.push(edge);
    };
    supplies.forEach(({ name, poles, earthed }, supply) => {
      if (state.supplyOn[supply]) {
        poles.forEach((one, taking) => {
          poles.forEach((other, giving) => {
            if (one === other) return;
            enter(one.node, {
              to: past.get(other.node)!,
              cost: THROUGH_SUPPLY,
              hops: [{ device: name, enter: one.terminal, leave: other.terminal }],
              passes: { supply: name, enter: one.terminal, leave: other.terminal },
              amps: ({ given, potentials }) =>
                poles.length > 2 && potentials[supply]![giving]! > potentials[supply]![taking]!
                  ? Infinity
                  : Math.min(-given[supply]![taking]!, given[supply]![giving]!),
            });
          });
        });
      }
      if (!earthed) return;
      supplies.forEach((other, another) => {
        if (!other.earthed || another === supply) return;
        const [here, there] = [poles.at(-1)!, other.poles.at(-1)!];
        enter(here.node, {
          to: past.get(there.node) ?? there.node,
          cost: THROUGH_SUPPLY,
          hops: [
            { device: name, enter: here.terminal },
            { device: other.name, enter: there.terminal },
          ],
          amps: ({ fromEarth }) => {
            const [into, out] = [-fromEarth[supply]!, fromEarth[another]!];
            return Math.min(Number.isNaN(into) ? Infinity : into, Number.isNaN(out) ? Infinity : out);
          },
        });
      });
    });
  }

  /** Of one axis the sign is the current's own; of several the load's voltage is the direction, a direct part positive. */
  private directionFor(load: number): number[] {
    const { axes } = this.machine;
    const { volts } = this.state;
    if (axes.count === 1) return [1];
    const size = Math.hypot(...volts.map((along) => along[load]!));
    const direct = axes.direct < 0 ? 0 : volts[axes.direct]![load]!;
    const sign = direct < -1e-9 * size ? -1 : 1;
    return volts.map((along) => (sign * along[load]!) / size);
  }

  private currentsFor(load: number): Currents {
    const direction = this.directionFor(load);
    const key = direction.map((part) => part.toFixed(9)).join();
    let currents = this.known.get(key);
    if (!currents) {
      const { machine, state, network, net } = this;
      currents = currentsAlong(machine, state, network, (node) => net.find(node), direction);
      this.known.set(key, currents);
    }
    return currents;
  }

  /**
   * The path that feeds a load, from a supply's pole through the load to another of its poles, or undefined when no
   * current flows in it.
   */
  path(load: number): TraceHop[] | undefined {
    const { axes, plan } = this.machine;
    const { a, b, device, from, to, siemens, volts } = plan.loads[load]!;
    const own = partsOfVolts(axes, (axis) => this.state.volts[axis]![load]!, axes.count);
    if (siemens === 0 || Math.hypot(own.direct, own.alternating) < 1e-6 * volts) return undefined;
    const currents = this.currentsFor(load);
    const amps = currents.through[load]!;
    const ends = amps > 0 ? { high: a, low: b } : { high: b, low: a };
    const hop = { device, enter: from, leave: to };
    const round = this.round(ends.low, ends.high, currents, {
      least: SHARE * Math.abs(amps),
      device,
    });
    if (!round) return undefined;
    const source = round.findLastIndex(({ passes }) => passes !== undefined);
    const { supply, enter, leave } = round[source]!.passes!;
    const hops = (edges: readonly Edge[]): TraceHop[] => edges.flatMap((edge) => edge.hops ?? []);
    const path: TraceHop[] = [
      { device: supply, enter: leave },
      ...hops(round.slice(source + 1)),
      amps > 0 ? hop : turned(hop),
      ...hops(round.slice(0, source)),
      { device: supply, enter },
    ];
    // Alternating current has no direction: it is told from the line pole to the return.
    const { poles } = plan.supplies.find(({ name }) => name === supply)!;
    const backwards = Math.abs(own.direct) < 1e-9 && leave === poles.at(-1)!.terminal;
    return withoutRepeats(backwards ? path.reverse().map(turned) : path);
  }

  /** The cheapest way on from the low end of a load, with the current, that comes to its high end through a supply. */
  private round(
    low: number,
    high: number,
    currents: Currents,
    { least, device }: { readonly least: number; readonly device: string },
  ): Edge[] | undefined {
    const isOwn = ({ hops }: Edge): boolean => hops?.[0]?.device === device;
    const goals = new Set([high, this.past.get(high) ?? high]);
    const cost = new Map<number, number>([[low, 0]]);
    const cameBy = new Map<number, { from: number; edge: Edge }>();
    const heap = new Heap();
    heap.push(low, 0);
    for (let top = heap.pop(); top; top = heap.pop()) {
      if (top.cost > cost.get(top.item)!) continue;
      if (goals.has(top.item)) {
        const edges: Edge[] = [];
        for (let at = top.item, way = cameBy.get(at); way; at = way.from, way = cameBy.get(at))
          edges.unshift(way.edge);
        return edges;
      }
      for (const edge of this.edges[top.item]!) {
        if (edge.amps && !(edge.amps(currents) > least)) continue;
        const total = top.cost + edge.cost + (isOwn(edge) ? THROUGH_OWN_CONTACT : 0);
        if (total >= (cost.get(edge.to) ?? Infinity)) continue;
        cost.set(edge.to, total);
        cameBy.set(edge.to, { from: top.item, edge });
        heap.push(edge.to, total);
      }
    }
    return undefined;
  }
}
