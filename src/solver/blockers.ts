/** The smallest set of open contacts that keeps current from a load: a minimum cut (Ford and Fulkerson, 1956). */
import type { Blocker } from '../../shared/solution.ts';
import type { Machine } from './machine.ts';
import { isClosed } from './network.ts';
import type { State } from './state.ts';

interface Arc {
  readonly to: number;
  room: number;
  readonly back: number;
  readonly part: number;
}

const UNCUTTABLE = 1_000_000;

/** Arcs of the whole circuit: an open contact can be cut once, everything closed never. */
function arcsOf(machine: Machine, state: State): Arc[][] {
  const { plan } = machine;
  const arcs: Arc[][] = Array.from({ length: plan.nodes }, () => []);
  const link = (a: number, b: number, room: number, part: number): void => {
    if (a === b) return;
    arcs[a]!.push({ to: b, room, back: arcs[b]!.length, part });
    arcs[b]!.push({ to: a, room, back: arcs[a]!.length - 1, part });
  };
  for (const [a, b] of plan.joins) link(a, b, UNCUTTABLE, -1);
  plan.switches.forEach(({ a, b }, index) => {
    link(a, b, isClosed(machine, state.at, index) ? UNCUTTABLE : 1, index);
  });
  return arcs;
}

/** One way from `from` to a node of `goals` that still has room, as [node, arc] pairs; undefined when there is none. */
function freeWay(
  arcs: readonly Arc[][],
  from: number,
  goals: ReadonlySet<number>,
): [number, number][] | undefined {
  const cameBy = new Map<number, [number, number]>();
  const seen = new Set([from]);
  const queue = [from];
  for (const node of queue) {
    if (goals.has(node)) {
      const way: [number, number][] = [];
      for (let here = node; here !== from; ) {
        const before = cameBy.get(here)!;
        way.push(before);
        here = before[0];
      }
      return way;
    }
    arcs[node]!.forEach((arc, index) => {
      if (arc.room <= 0 || seen.has(arc.to)) return;
      seen.add(arc.to);
      cameBy.set(arc.to, [node, index]);
      queue.push(arc.to);
    });
  }
  return undefined;
}

/**
 * Open contacts between a load's end and the poles, as few as possible and of those the ones nearest the poles; `undefined`
 * when closed contacts lead there; an empty list when nothing leads there at all.
 */
function cut(machine: Machine, state: State, end: number, poles: ReadonlySet<number>): number[] | undefined {
  const arcs = arcsOf(machine, state);
  let any = false;
  for (;;) {
    const way = freeWay(arcs, end, poles);
    if (!way) break;
    any = true;
    if (way.every(([node, index]) => arcs[node]![index]!.room > 1)) return undefined;
    for (const [node, index] of way) {
      const arc = arcs[node]![index]!;
      arc.room -= 1;
      arcs[arc.to]![arc.back]!.room += 1;
    }
  }
  if (!any) return [];
  // Searched backwards from the poles, so that of equal cuts the one an electrician meets first is named.
  const seen = new Set(poles);
  const queue = [...poles];
  for (const node of queue) {
    for (const arc of arcs[node]!) {
      if (seen.has(arc.to) || arcs[arc.to]![arc.back]!.room <= 0) continue;
      seen.add(arc.to);
      queue.push(arc.to);
    }
  }
  const parts = new Set<number>();
  for (const node of seen) {
    for (const arc of arcs[node]!) if (!seen.has(arc.to) && arc.part >= 0) parts.add(arc.part);
  }
  return [...parts].sort((a, b) => a - b);
}

function blocker(machine: Machine, state: State, index: number): Blocker {
  const { device, from, to, form, mechanism, fixed } = machine.plan.switches[index]!;
  const at = mechanism < 0 ? 1 : state.at[mechanism]!;
  const travelling = (at & (at - 1)) !== 0;
  const because = fixed === 'open' ? 'fault' : travelling ? 'travelling' : form === 'make' ? 'rest' : 'moved';
  return { device, enter: from, leave: to, because };
}

/** Why no current flows in a load: the smallest set of open contacts; see `loadTrace` in shared/solution.ts. */
export function blockersOf(machine: Machine, state: State, load: number): Blocker[] {
  const { plan } = machine;
  const { a, b } = plan.loads[load]!;
  let found: number[] | undefined;
  let lost: string | undefined;
  plan.supplies.forEach(({ poles, name }, index) => {
    const common = new Set([poles.at(-1)!.node]);
    const lines = new Set(poles.slice(0, -1).map(({ node }) => node));
    for (const [line, back] of [
      [a, b],
      [b, a],
    ] as const) {
      const feeding = cut(machine, state, line, lines);
      const returning = cut(machine, state, back, common);
      if (feeding?.length === 0 || returning?.length === 0) continue;
      if (!feeding && !returning) {
        if (!state.supplyOn[index]) lost = name;
        continue;
      }
      const smaller = !feeding
        ? returning!
        : !returning || feeding.length <= returning.length
          ? feeding
          : returning;
      // The way round that is closed on its return side is how the load is meant to be connected.
      const better =
        !found || (!returning && smaller.length <= found.length) || smaller.length < found.length;
      if (better) found = smaller;
    }
  });
  if (lost !== undefined) {
    const supply = plan.supplies.find(({ name }) => name === lost)!;
    return [
      {
        device: lost,
        enter: supply.poles[0]!.terminal,
        leave: supply.poles.at(-1)!.terminal,
        because: 'fault',
      },
    ];
  }
  return (found ?? []).map((index) => blocker(machine, state, index));
}
