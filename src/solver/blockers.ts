/**
 * Why no current flows in a load: the smallest set of open contacts that keeps it away. Current flows in a load when it lies
 * on a ring through a source: two ways that have no conductor in common lead from its ends to two potentials of the
 * supplies. So what stops it leaves no such two ways, which is so when the contacts of the set, together with one
 * conductor, part it from the supplies (K. Menger, 1927); each conductor that may be the one is tried.
 */
import type { Blocker } from '../../shared/solution.ts';
import { Joining } from './joining.ts';
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
}

/** Regions up to this many conductors are searched for the very smallest set; in larger ones some set is found. */
const SMALL = 64;

/** What is open in one state. Closed contacts are contracted; between what is left lie open contacts and loads. */
export class Blocking {
  private readonly machine: Machine;
  private readonly state: State;
  private readonly joining: Joining;
  private readonly links = new Map<number, Link[]>();
  private readonly groups: readonly RigidSupplies[];

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
      if (!isClosed(machine, state.at, part)) this.link(a, b, part, -1);
    });
    plan.loads.forEach(({ a, b, siemens }, load) => {
      if (siemens > 0) this.link(a, b, -1, load);
    });
    plan.supplies.forEach(({ poles }, index) => {
      if (state.supplyOn[index]) for (const { node } of poles) this.link(node, poles.at(-1)!.node, -1, -1);
    });
  }

  private conductorOf(node: number): number {
    return this.joining.find(node);
  }

  private groupsWith(supplyOn: Uint8Array): RigidSupplies[] {
    return rigidSupplies(this.machine, supplyOn, (node) => this.conductorOf(node));
  }

  private link(a: number, b: number, part: number, load: number): void {
    const one = this.conductorOf(a);
    const other = this.conductorOf(b);
    if (one === other) return;
    for (const [from, to] of [
      [one, other],
      [other, one],
    ] as const) {
      const list = this.links.get(from);
      if (list) list.push({ to, part, load });
      else this.links.set(from, [{ to, part, load }]);
    }
  }

  /** The graph about a load up to the potentials of a group, each of which is one node of it. */
  private regionOf({ potentials }: RigidSupplies, load: number) {
    const { a, b } = this.machine.plan.loads[load]!;
    const railOf = new Map(potentials.flatMap((nodes, rail) => nodes.map((node) => [node, rail] as const)));
    const number = new Map<number, number>();
    const queue: number[] = [];
    const numberOf = (node: number): number => {
      const rail = railOf.get(node);
      if (rail !== undefined) return rail;
      let known = number.get(node);
      if (known === undefined) {
        known = potentials.length + queue.push(node) - 1;
        number.set(node, known);
      }
      return known;
    };
    const ends = [...new Set([a, b].map((end) => numberOf(this.conductorOf(end))))];
    const reached = new Set(ends.filter((end) => end < potentials.length));
    const edges: [number, number, number][] = [];
    for (const node of queue) {
      const here = numberOf(node);
      for (const { to, part, load: through } of this.links.get(node) ?? []) {
        if (through === load) continue;
        const there = numberOf(to);
        if (there < potentials.length) reached.add(there);
        else if (there < here) continue;
        edges.push([here, there, part]);
      }
    }
    return { ends, edges, rails: potentials.length, size: potentials.length + queue.length, reached };
  }

  /** The smallest cut that keeps a load from a current of these supplies; undefined when nothing that is open does. */
  private cut(group: RigidSupplies, load: number): number[] | undefined {
    const { ends, edges, rails, size, reached } = this.regionOf(group, load);
    if (reached.size < 2) return [];
    const graph = new CutGraph(size);
    for (const [one, other, part] of edges) graph.link(one, other, part, part >= 0);
    const goals = new Set(reached);
    // Bridged by closed contacts its two ends are one conductor, which must itself be kept from a second potential.
    const bridged = ends.length === 1;
    const firm = graph.firmWay(ends, goals);
    const inside = Array.from({ length: size <= SMALL ? size - rails : 0 }, (_, index) => rails + index);
    // What lies on every way that can't be cut lies on this one.
    const candidates = firm ?? [...reached, ...ends, ...inside];
    let best: number[] | undefined;
    for (const without of [...new Set(candidates)].sort((one, other) => one - other)) {
      if (bridged && without === ends[0]) continue;
      const left = new Set([...goals].filter((goal) => goal !== without));
      const found = graph.cut(ends, left, without, best?.length);
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
      if (!found) return [{ device: supply.name, enter: first.terminal, leave: last.terminal, because: 'fault' }];
      for (const part of found) stops.add(part);
    }
    return this.inOrder(stops);
  }

  private inOrder(stops: ReadonlySet<number>): Blocker[] {
    return [...stops].sort((one, other) => one - other).map((part) => this.told(part));
  }
}
