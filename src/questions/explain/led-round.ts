/**
 * On a drawing as found: a relay that stays in although a stop or a trip opened, because something leads round it. A drawing as it is meant
 * has no such way (a stop wins, see the rules of practice), so where there is one it is the mistake that was made. What else was
 * exchanged can't be told from the drawing: the words say what was meant, and what they mean no solver knows.
 */
import type { TraceHop } from '../../../shared/solution.ts';
import { deviceOf, traitsOf } from '../../circuit/index.ts';
import { once } from '../../graph/index.ts';
import { isClosed, type Plan } from '../../solver/index.ts';
import type { ExplanationStep } from '../said.ts';
import { coilsOf, type History, switchAt } from './history.ts';
import { aboutHops, hopOf } from './wording.ts';

interface Way {
  readonly nodes: readonly number[];
  readonly parts: readonly number[];
}

/** Ways along conductors and contacts, whether these are closed or not; never through a load. */
class Ways {
  private readonly plan: Plan;
  private readonly edges = new Map<number, { to: number; part: number }[]>();

  constructor(plan: Plan) {
    this.plan = plan;
    for (const [a, b] of plan.joins) this.link(a, b, -1);
    plan.switches.forEach(({ a, b }, part) => {
      this.link(a, b, part);
    });
  }

  private link(a: number, b: number, part: number): void {
    for (const [from, to] of [
      [a, b],
      [b, a],
    ] as const) {
      const list = this.edges.get(from);
      if (list) list.push({ to, part });
      else this.edges.set(from, [{ to, part }]);
    }
  }

  /** The shortest way between two nodes that passes none of some nodes. */
  private between(from: number, to: number, closed: ReadonlySet<number>): Way | undefined {
    const cameBy = new Map<number, { from: number; part: number } | undefined>([[from, undefined]]);
    for (const node of cameBy.keys()) {
      if (node === to) break;
      for (const { to: next, part } of this.edges.get(node) ?? [])
        if (!cameBy.has(next) && !closed.has(next)) cameBy.set(next, { from: node, part });
    }
    if (!cameBy.has(to)) return undefined;
    const nodes = [to];
    const parts: number[] = [];
    for (let step = cameBy.get(to); step; step = cameBy.get(step.from)) {
      nodes.unshift(step.from);
      if (step.part >= 0) parts.unshift(step.part);
    }
    return { nodes, parts };
  }

  /** Legs of one pole are never closed together, nor are others that need two positions at once. */
  private canBe({ parts }: Way): boolean {
    const positions = new Map<number, readonly number[]>();
    return parts.every((part) => {
      const { mechanism, closedIn } = this.plan.switches[part]!;
      const both = (positions.get(mechanism) ?? closedIn).filter((each) => closedIn.includes(each));
      if (mechanism >= 0) positions.set(mechanism, both);
      return both.length > 0;
    });
  }

  /** A way through a contact: what lies before it, and what behind. */
  through(part: number, from: number, to: number): { before: Way; after: Way } | undefined {
    const { a, b } = this.plan.switches[part]!;
    for (const [enter, leave] of [
      [a, b],
      [b, a],
    ] as const) {
      const before = this.between(from, enter, new Set([leave, to]));
      const after = before && this.between(leave, to, new Set(before.nodes));
      if (before && after && this.canBe({ nodes: [], parts: [...before.parts, part, ...after.parts] }))
        return { before, after };
    }
    return undefined;
  }
}

const waysOf = once((plan: Plan) => new Ways(plan));

/** From the pole to the coil: terminals that the feeding path passes, as nodes, with the hops between. */
function fedBy(history: History, after: number, mechanism: number) {
  const { plan } = history.machine;
  const id = coilsOf(history, mechanism)[0]!;
  const { device, from, to } = plan.loads.find((load) => load.id === id)!;
  const { path, fed } = history.trace(after, id)!;
  const coil = path.findIndex(
    (hop) => hop.device === device && [from, to].includes(hop.enter) && hop.leave !== undefined,
  );
  if (!fed || coil < 0) return undefined;
  const nodeOf = (hop: TraceHop, terminal: string): number => plan.nodeOf.get(`${hop.device}:${terminal}`)!;
  return {
    start: nodeOf(path[0]!, path[0]!.enter),
    hops: path.slice(1, coil),
    end: nodeOf(path[coil]!, path[coil]!.enter),
    coil: path[coil]!,
  };
}

/** Whether a device can only stop: an overload does; a button, unless it makes the way of a coil too. */
function stops(history: History, ways: Ways, name: string, start: number): boolean {
  const { plan } = history.machine;
  const device = deviceOf(history.circuit, name);
  if (!device) return false;
  const { verbs } = traitsOf(device);
  if (verbs.includes('trip')) return true;
  if (!verbs.includes('press')) return false;
  const coils = plan.loads.flatMap(({ a, b, mechanism }) => (mechanism >= 0 ? [a, b] : []));
  return !plan.switches.some(
    (part, index) =>
      part.device === name &&
      part.form === 'make' &&
      coils.some((end) => ways.through(index, start, end) !== undefined),
  );
}

/** The stretch of a feeding path that leaves a way before a contact and comes back to it behind. */
function stretch(
  { plan }: History['machine'],
  { start, hops, coil }: NonNullable<ReturnType<typeof fedBy>>,
  { before, after }: { before: Way; after: Way },
) {
  const at = (hop: TraceHop, terminal: string): number => plan.nodeOf.get(`${hop.device}:${terminal}`)!;
  const joined = (one: number, nodes: readonly number[]): boolean =>
    nodes.includes(one) ||
    plan.joins.some((pair) => pair.includes(one) && pair.some((each) => nodes.includes(each)));
  const nodes = [start, ...hops.map((hop) => at(hop, hop.leave ?? hop.enter))];
  const from = nodes.findLastIndex((node) => joined(node, before.nodes));
  const to = nodes.findIndex((node, index) => index > from && joined(node, after.nodes));
  if (from < 0 || to < 0) return undefined;
  const last = hops[from - 1];
  const next = hops[to] ?? coil;
  return {
    by: hops.slice(from, to).map(hopOf),
    from: last ? `${last.device}:${last.leave ?? last.enter}` : undefined,
    to: `${next.device}:${next.enter}`,
  };
}

/**
 * Where a relay that has operated does so past a stop: at some moment since it operated the stop was open, on a way that the relay has
 * besides, and something else fed it. Undefined on drawings as they are meant, and where no stop has been led round.
 */
export function ledRound(history: History, after: number, mechanism: number): ExplanationStep | undefined {
  const { circuit, machine, stages } = history;
  const { plan } = machine;
  const isIn = (stage: number): boolean => stages[stage]!.state.at[mechanism] === 2;
  if (!circuit.asFound || coilsOf(history, mechanism).length === 0) return undefined;
  const ways = waysOf(history.machine.plan);
  for (let stage = after; stage >= 0 && isIn(stage); stage--) {
    const fed = fedBy(history, stage, mechanism);
    if (!fed) continue;
    const passed = new Set(fed.hops.map((hop) => switchAt(history, hop)?.device));
    for (const [part, { device, from, to, form }] of plan.switches.entries()) {
      if (form !== 'break' || passed.has(device) || isClosed(machine, stages[stage]!.state.at, part))
        continue;
      if (!stops(history, ways, device, fed.start)) continue;
      const way = ways.through(part, fed.start, fed.end);
      const round = way && stretch(machine, fed, way);
      if (!round?.from || round.by.length === 0) continue;
      const { id: relay, device: whole } = plan.mechanisms[mechanism]!;
      const stop = { device, enter: from, leave: to };
      const said = { says: 'ledRound', relay, stop, ...round, from: round.from } as const;
      return { said, about: [whole, ...aboutHops([stop, ...round.by])] };
    }
  }
  return undefined;
}
