/**
 * Why no current flows in a load: the smallest set of open contacts that keeps it away. Current flows in a load when it lies
 * on a ring through a source: two ways that have no conductor in common lead from its ends to two potentials of the
 * supplies. So what stops it leaves no such two ways, which is so when the contacts of the set, together with one
 * conductor, part it from the supplies (K. Menger, 1927); each conductor that may be the one is tried.
 */
import type { Blocker } from '../../shared/solution.ts';
import { Joining } from '../graph/index.ts';
import type { Machine } from './machine.ts';
import { CutGraph } from './minimum-cut.ts';
import { isClosed } from './network.ts';
import { type RigidSupplies, rigidSupplies } from './rigid-supplies.ts';
import type { State } from './state.ts';

interface Link {
  readonly to: number;
  /** Index of an open switch, which can be cut; -1 for a load or another supply, which can't. */
  readonly part: number;
  /** Index of the load; -1. */
  readonly load: number;
  /** Index of the supply; -1. */
  readonly supply: number;
}

/** What hangs together about a load, as a graph; the first nodes are the potentials. */
interface Region {
  readonly number: ReadonlyMap<number, number>;
  readonly graph: CutGraph;
  readonly reached: Set<number>;
  readonly rails: number;
  readonly size: number;
}

/** An edge that stands for several, or for a supply: no cut names it and no load is it. */
const FIRM = -1;

/** Regions up to this many conductors are searched for the very smallest set; in larger ones some set is found. */
const SMALL = 64;

/** What is open in one state. Closed contacts are contracted; between what is left lie open contacts and loads. */
export class Blocking {
  private readonly machine: Machine;
  private readonly state: State;
  private readonly joining: Joining;
  private readonly links = new Map<number, Link[]>();
  private readonly groups: readonly RigidSupplies[];
  private readonly regions = new Map<RigidSupplies, Map<number, Region>>();

  constructor(machine: Machine, state: State) {
    const { plan } = machine;
    this.machine = machine;
    this.state = state;
    this.joining = new Joining(plan.nodes);
    for (const [a, b] of plan.joins) this.joining.join(a, b);
    plan.switches.forEach(({ a, b }, index) => {
      if (isClosed(machine, state.at, index)) this.joining.join(a, b);
    });
    const earthed = plan.supplies.filter((supply) => supply.earthed);
    for (const { poles } of earthed) this.joining.join(earthed[0]!.poles.at(-1)!.node, poles.at(-1)!.node);
    this.groups = this.groupsWith(state.supplyOn);
    plan.switches.forEach(({ a, b }, part) => {
      if (!isClosed(machine, state.at, part)) this.link(a, b, { part });
    });
    plan.loads.forEach(({ a, b, siemens }, load) => {
      if (siemens > 0) this.link(a, b, { load });
    });
    plan.supplies.forEach(({ poles }, index) => {
      if (!state.supplyOn[index]) return;
      for (const { node } of poles) this.link(node, poles.at(-1)!.node, { supply: index });
    });
  }

  private conductorOf(node: number): number {
    return this.joining.find(node);
  }

  private groupsWith(supplyOn: Uint8Array): RigidSupplies[] {
    return rigidSupplies(this.machine, supplyOn, (node) => this.conductorOf(node));
  }

  private link(a: number, b: number, what: Partial<Pick<Link, 'part' | 'load' | 'supply'>>): void {
    const one = this.conductorOf(a);
    const other = this.conductorOf(b);
    if (one === other) return;
    for (const [from, to] of [
      [one, other],
      [other, one],
    ] as const) {
      const list = this.links.get(from);
      const link = { to, part: -1, load: -1, supply: -1, ...what };
      if (list) list.push(link);
      else this.links.set(from, [link]);
    }
  }

  /** The conductors about some of them, up to the potentials of a group, each of which is one node. */
  private regionAt(group: RigidSupplies, starts: readonly number[]): Region {
    const { potentials } = group;
    const known = this.regions.get(group) ?? new Map<number, Region>();
    this.regions.set(group, known);
    const before = known.get(starts[0]!);
    // A load that is burnt open doesn't join its own ends.
    if (before && starts.every((start) => before.number.has(start))) return before;
    const railOf = new Map(potentials.flatMap((nodes, rail) => nodes.map((node) => [node, rail] as const)));
    const number = new Map(railOf);
    const queue: number[] = [];
    const numberOf = (node: number): number => {
      let found = number.get(node);
      if (found === undefined) {
        found = potentials.length + queue.push(node) - 1;
        number.set(node, found);
      }
      return found;
    };
    for (const start of starts) numberOf(start);
    const reached = new Set<number>();
    const contacts: [number, number, number][] = [];
    // Loads side by side are one edge; which of them there are matters only where it is a single one.
    const loads = new Map<string, { one: number; other: number; load: number; count: number }>();
    for (const node of queue) {
      const here = numberOf(node);
      for (const { to, part, load, supply } of this.links.get(node) ?? []) {
        if (group.supplies.includes(supply)) continue;
        const there = numberOf(to);
        if (there < potentials.length) reached.add(there);
        else if (there < here) continue;
        if (part >= 0) contacts.push([here, there, part]);
        else {
          const key = `${here} ${there}`;
          const same = loads.get(key);
          if (same) same.count++;
          else loads.set(key, { one: here, other: there, load, count: 1 });
        }
      }
    }
    const graph = new CutGraph(potentials.length + queue.length);
    for (const [one, other, part] of contacts) graph.link(one, other, part, true);
    for (const { one, other, load, count } of loads.values())
      graph.link(one, other, count === 1 ? this.partOf(load) : FIRM, false);
    const region = {
      number,
      graph,
      reached,
      rails: potentials.length,
      size: potentials.length + queue.length,
    };
    for (const node of queue) known.set(node, region);
    return region;
  }

  /** A load as an edge of a graph, beyond the contacts. */
  private partOf(load: number): number {
    return load < 0 ? FIRM : this.machine.plan.switches.length + load;
  }

  /** Of a load with both its ends on poles: bridged on one, it is told what keeps that one from the others. */
  private cutBetweenPoles(
    { supplies, potentials }: RigidSupplies,
    conductors: readonly number[],
    load: number,
  ): number[] | undefined {
    const at = conductors.map((end) => potentials.findIndex((nodes) => nodes.includes(end)));
    if (new Set(at).size > 1) return undefined;
    if (conductors.length > 1) return [];
    const others = { supplies, potentials: potentials.filter((_, index) => index !== at[0]) };
    const { number, graph, reached } = this.regionAt(others, conductors);
    const sources = [number.get(conductors[0]!)!];
    return graph.cut({ sources, goals: reached, without: -1, except: this.partOf(load) });
  }

  /** The smallest cut that keeps a load from a current of these supplies; undefined when nothing that is open does. */
  private cut(group: RigidSupplies, load: number): number[] | undefined {
    const { a, b } = this.machine.plan.loads[load]!;
    const conductors = [...new Set([this.conductorOf(a), this.conductorOf(b)])];
    const free = conductors.filter((end) => !group.potentials.some((nodes) => nodes.includes(end)));
    if (free.length === 0) return this.cutBetweenPoles(group, conductors, load);
    const { number, graph, reached, rails, size } = this.regionAt(group, free);
    const ends = conductors.map((end) => number.get(end)!);
    for (const end of ends) if (end < rails) reached.add(end);
    if (reached.size < 2) return [];
    const except = this.partOf(load);
    // Bridged by closed contacts its two ends are one conductor, which must itself be kept from a second potential.
    const bridged = ends.length === 1;
    const firm = graph.firmWay(ends, reached, except);
    const inside = Array.from({ length: size <= SMALL ? size - rails : 0 }, (_, index) => rails + index);
    // What lies on every way that can't be cut lies on this one.
    const candidates = firm ?? [...reached, ...ends, ...inside];
    let best: number[] | undefined;
    for (const without of [...new Set(candidates)].sort((one, other) => one - other)) {
      if (bridged && without === ends[0]) continue;
      const goals = new Set([...reached].filter((rail) => rail !== without));
      const found = graph.cut({ sources: ends, goals, without, except }, best?.length);
      if (found && (!best || found.length < best.length)) best = found;
      if (best?.length === 0) break;
    }
    return best;
  }

  private told(index: number): Blocker {
    const { device, from, to, form, mechanism, fixed } = this.machine.plan.switches[index]!;
    const at = mechanism < 0 ? 1 : this.state.at[mechanism]!;
    const travelling = (at & (at - 1)) !== 0;
    const because =
      fixed === 'open' ? 'fault' : travelling ? 'travelling' : form === 'make' ? 'rest' : 'moved';
    return { device, enter: from, leave: to, because };
  }

  /** The blockers of a load in which no current flows; see `loadTrace` in shared/solution.ts. */
  of(load: number): Blocker[] {
    const stops = new Set(this.groups.flatMap((group) => this.cut(group, load) ?? []));
    if (stops.size > 0) return this.inOrder(stops);
    // Nothing that is on could feed it: what would with a supply that is off?
    for (const [index, supply] of this.machine.plan.supplies.entries()) {
      if (this.state.supplyOn[index]) continue;
      const supplyOn = this.state.supplyOn.slice();
      supplyOn[index] = 1;
      const group = this.groupsWith(supplyOn).find(({ supplies }) => supplies.includes(index))!;
      const found = this.cut(group, load);
      const [first, last] = [supply.poles[0]!, supply.poles.at(-1)!];
      if (!found)
        return [{ device: supply.name, enter: first.terminal, leave: last.terminal, because: 'fault' }];
      for (const part of found) stops.add(part);
    }
    return this.inOrder(stops);
  }

  private inOrder(stops: ReadonlySet<number>): Blocker[] {
    return [...stops].sort((one, other) => one - other).map((part) => this.told(part));
  }
}
