/** Why no current flows in a load: the smallest set of open contacts that keeps it away. */
import type { Blocker } from '../../shared/solution.ts';
import { Joining } from './joining.ts';
import type { Machine } from './machine.ts';
import { CutGraph } from './minimum-cut.ts';
import { isClosed } from './network.ts';
import type { PlanSupply } from './plan.ts';
import type { State } from './state.ts';

/** Poles between which a current can flow: of one supply, or of several that are earthed or hang together. */
interface System {
  readonly on: boolean;
  /** Conductors by potential, the return first; those of one potential drive nothing between them. */
  readonly potentials: readonly (readonly number[])[];
  readonly supplies: readonly PlanSupply[];
}

/**
 * What is open in one state. Closed contacts are contracted; between what is left lie open contacts, which can be cut, and
 * loads, which can't. A pole is never passed: current ends there.
 */
export class Blocking {
  private readonly machine: Machine;
  private readonly state: State;
  private readonly conductor: Int32Array;
  private readonly graph: CutGraph;
  private readonly systems: readonly System[];
  private readonly poles: ReadonlySet<number>;
  /** Conductors that hang together in any way, poles apart; and the poles each such part could come to. */
  private readonly parts: Joining;
  private readonly polesOfPart = new Map<number, Set<number>>();

  constructor(machine: Machine, state: State) {
    const { plan } = machine;
    this.machine = machine;
    this.state = state;
    const joining = new Joining(plan.nodes);
    for (const [a, b] of plan.joins) joining.join(a, b);
    plan.switches.forEach(({ a, b }, index) => {
      if (isClosed(machine, state.at, index)) joining.join(a, b);
    });
    this.conductor = Int32Array.from({ length: plan.nodes }, (_, node) => joining.find(node));
    this.systems = this.systemsOf(plan.supplies);
    this.poles = new Set(this.systems.flatMap(({ potentials }) => potentials.flat()));
    this.graph = new CutGraph(plan.nodes);
    this.parts = new Joining(plan.nodes);
    const link = (a: number, b: number, part: number, cuttable: boolean): void => {
      const one = this.conductor[a]!;
      const other = this.conductor[b]!;
      this.graph.link(one, other, part, cuttable);
      const ends = [one, other].map((end) => this.poles.has(end));
      if (!ends[0] && !ends[1]) this.parts.join(one, other);
    };
    plan.switches.forEach(({ a, b }, index) => {
      if (!isClosed(machine, state.at, index)) link(a, b, index, true);
    });
    plan.loads.forEach(({ a, b, siemens }, index) => {
      if (siemens > 0) link(a, b, plan.switches.length + index, false);
    });
    for (const { a, b } of [...plan.switches, ...plan.loads]) {
      this.meets(this.conductor[a]!, this.conductor[b]!);
      this.meets(this.conductor[b]!, this.conductor[a]!);
    }
  }

  private meets(end: number, other: number): void {
    if (this.poles.has(end) || !this.poles.has(other)) return;
    const part = this.parts.find(end);
    const known = this.polesOfPart.get(part);
    if (known) known.add(other);
    else this.polesOfPart.set(part, new Set([other]));
  }

  /** Supplies that are on and touch, directly or through whatever may ever conduct, make one system; so do earthed ones. */
  private systemsOf(supplies: readonly PlanSupply[]): System[] {
    const { plan } = this.machine;
    const hanging = new Joining(plan.nodes);
    for (const { a, b } of [...plan.switches, ...plan.loads])
      hanging.join(this.conductor[a]!, this.conductor[b]!);
    const together = new Joining(supplies.length);
    const on = supplies.map((_, index) => this.state.supplyOn[index] === 1);
    const partsOf = ({ poles }: PlanSupply): number[] =>
      poles.map(({ node }) => hanging.find(this.conductor[node]!));
    supplies.forEach((one, index) => {
      for (let before = 0; before < index; before++) {
        const other = supplies[before]!;
        if (!on[index] || !on[before]) continue;
        const touch = partsOf(one).some((part) => partsOf(other).includes(part));
        if (touch || (one.earthed && other.earthed)) together.join(index, before);
      }
    });
    const members = new Map<number, number[]>();
    supplies.forEach((_, index) => {
      const root = together.find(index);
      members.set(root, [...(members.get(root) ?? []), index]);
    });
    return [...members.values()].map((list) => ({
      on: on[list[0]!]!,
      supplies: list.map((index) => supplies[index]!),
      potentials: this.potentialsOf(list.map((index) => supplies[index]!)),
    }));
  }

  /** Conductors of the poles; earthed supplies have a potential in common, and so have poles that are joined. */
  private potentialsOf(supplies: readonly PlanSupply[]): number[][] {
    const byPotential = new Map<string, number[]>();
    for (const { name, earthed, poles } of supplies) {
      // The return comes last of a supply's poles, and is looked at first.
      for (const { node, re, im } of [...poles].reverse()) {
        const conductor = this.conductor[node]!;
        const joined = [...byPotential.values()].find((list) => list.includes(conductor));
        if (joined) continue;
        const key = `${earthed ? '' : name} ${re.toFixed(6)} ${im.toFixed(6)}`;
        const list = byPotential.get(key);
        if (list) list.push(conductor);
        else byPotential.set(key, [conductor]);
      }
    }
    return [...byPotential.values()];
  }

  /** Potentials of a system that a conductor could come to if every contact were closed. */
  private couldReach({ potentials }: System, end: number): number[] {
    const poles = this.poles.has(end) ? new Set([end]) : this.polesOfPart.get(this.parts.find(end));
    return potentials.flatMap((nodes, at) => (nodes.some((node) => poles?.has(node)) ? [at] : []));
  }

  /**
   * The smallest cut that keeps the two ends of a load from two different potentials: either end from all, or both from
   * all but one. Undefined when nothing that is open does.
   */
  private cut(system: System, load: number): number[] | undefined {
    const { plan } = this.machine;
    const { a, b } = plan.loads[load]!;
    const ends = [this.conductor[a]!, this.conductor[b]!];
    if (ends[0] === ends[1]) return this.cutBridged(system, ends[0]!);
    const [fromA, fromB] = ends.map((end) => this.couldReach(system, end));
    if (fromA!.length === 0 || fromB!.length === 0) return [];
    if (fromA!.length === 1 && fromB!.length === 1 && fromA![0] === fromB![0]) return [];
    const all = system.potentials.flat();
    const choices: [sources: readonly number[], goals: readonly number[]][] = [
      ...system.potentials.map((nodes): [number[], number[]] => [
        ends,
        all.filter((node) => !nodes.includes(node)),
      ]),
      [[ends[0]!], all],
      [[ends[1]!], all],
    ];
    return this.smallest(
      choices,
      (node) => !this.poles.has(node),
      (part) => part !== plan.switches.length + load,
    );
  }

  /** Both ends are one conductor, so no contact but those that keep that conductor from a second potential counts. */
  private cutBridged(system: System, conductor: number): number[] | undefined {
    const choices = system.potentials.map((nodes): [number[], number[]] => [
      [conductor],
      system.potentials.flat().filter((node) => !nodes.includes(node)),
    ]);
    return this.smallest(
      choices,
      (node) => node === conductor || !this.poles.has(node),
      (part) => part < this.machine.plan.switches.length,
    );
  }

  private smallest(
    choices: readonly (readonly [sources: readonly number[], goals: readonly number[]])[],
    passable: (node: number) => boolean,
    usable: (part: number) => boolean,
  ): number[] | undefined {
    let best: number[] | undefined;
    for (const [sources, goals] of choices) {
      const found = this.graph.cut(sources, new Set(goals), passable, usable);
      if (found && (!best || found.length < best.length)) best = found;
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
    const stops = new Set<number>();
    const ofDead = new Set<number>();
    let lost: PlanSupply | undefined;
    for (const system of this.systems) {
      const found = this.cut(system, load);
      if (found) for (const part of found) (system.on ? stops : ofDead).add(part);
      else if (!system.on) lost ??= system.supplies[0]!;
    }
    if (stops.size === 0 && lost) {
      const [first, last] = [lost.poles[0]!, lost.poles.at(-1)!];
      return [{ device: lost.name, enter: first.terminal, leave: last.terminal, because: 'fault' }];
    }
    return [...(stops.size > 0 ? stops : ofDead)].sort((x, y) => x - y).map((part) => this.told(part));
  }
}
