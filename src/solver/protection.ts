/** What opens on a short circuit. */
import type { Machine } from './machine.ts';
import { isClosed } from './network.ts';
import { partitionFor } from './partition.ts';
import type { State } from './state.ts';

/**
 * Switches on the shortest closed way from one pole of a supply to another, in order; undefined when there is none.
 * `across`: the way may go through the other supplies and through earth, as the current does when two supplies of
 * different voltage are joined at both poles.
 */
function closedWay(
  machine: Machine,
  state: State,
  { supply, from, to, across }: { supply: number; from: number; to: number; across: boolean },
): number[] | undefined {
  const { plan } = machine;
  const links = new Map<number, { node: number; part: number }[]>();
  const link = (a: number, b: number, part: number): void => {
    for (const [one, other] of [
      [a, b],
      [b, a],
    ] as const) {
      const list = links.get(one);
      if (list) list.push({ node: other, part });
      else links.set(one, [{ node: other, part }]);
    }
  };
  for (const [a, b] of plan.joins) link(a, b, -1);
  plan.switches.forEach(({ a, b }, index) => {
    if (isClosed(machine, state.at, index)) link(a, b, index);
  });
  if (across) {
    let earth: number | undefined;
    plan.supplies.forEach(({ poles, earthed }, index) => {
      if (!state.supplyOn[index]) return;
      const common = poles.at(-1)!.node;
      if (index !== supply) for (const { node } of poles) link(node, common, -1);
      if (!earthed) return;
      if (earth !== undefined) link(earth, common, -1);
      earth = common;
    });
  }
  const cameBy = new Map<number, { node: number; part: number }>();
  const queue = [from];
  const seen = new Set(queue);
  for (const node of queue) {
    if (node === to) {
      const way: number[] = [];
      for (let here = to; here !== from; ) {
        const { node: before, part } = cameBy.get(here)!;
        if (part >= 0) way.unshift(part);
        here = before;
      }
      return way;
    }
    for (const next of links.get(node) ?? []) {
      if (seen.has(next.node)) continue;
      seen.add(next.node);
      cameBy.set(next.node, { node, part: next.part });
      queue.push(next.node);
    }
  }
  return undefined;
}

/**
 * The protective mechanism that opens: the lowest rating on the way; of equals the one nearest the fault. A pole that is
 * welded can't interrupt anything.
 */
function opener(machine: Machine, way: readonly number[]): number | undefined {
  let best: number | undefined;
  let lowest = Infinity;
  for (const part of way) {
    const mechanism = machine.switchMechanism[part]!;
    const found = mechanism < 0 ? undefined : machine.plan.mechanisms[mechanism];
    if (!found?.protects || found.frozenAt !== undefined || machine.plan.switches[part]!.fixed) continue;
    const amps = found.amps ?? Infinity;
    if (best === undefined || amps <= lowest) {
      best = mechanism;
      lowest = amps;
    }
  }
  return best;
}

/** The device that clears a short circuit of a supply; undefined when nothing protects it. */
function openerFor(machine: Machine, state: State, supply: number): number | undefined {
  const { poles } = machine.plan.supplies[supply]!;
  for (const across of [false, true]) {
    for (const one of poles) {
      for (const other of poles) {
        if (one === other || (one.re === other.re && one.im === other.im)) continue;
        const way = closedWay(machine, state, { supply, from: one.node, to: other.node, across });
        if (way) return opener(machine, way);
      }
    }
  }
  return undefined;
}

/**
 * Clears one short circuit of the given supplies: a protective device on the closed way between two poles opens, or,
 * where there is none, the supply is lost. The partition is brought up to date; voltages are not.
 */
export function clearShort(machine: Machine, state: State, shorted: readonly number[]): void {
  const { plan } = machine;
  for (const index of shorted) {
    const opened = openerFor(machine, state, index);
    if (opened === undefined) {
      state.supplyOn[index] = 0;
      state.shorted.push(index);
      continue;
    }
    const closed = plan.switches.find(({ mechanism }) => mechanism === opened)!.closedIn[0]!;
    const open = 1 << (1 - closed);
    state.at[opened] = open;
    state.goal[opened] = open;
    state.tripped.push(opened);
  }
  state.partition = partitionFor(machine, state.at, state.supplyOn);
}
