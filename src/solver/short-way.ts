/** The way that the current of a short circuit takes. */
import { alongAxis } from './axes.ts';
import type { Machine } from './machine.ts';
import { isClosed } from './network.ts';
import type { PlanPole } from './plan.ts';
import type { State } from './state.ts';
import { polesThatHold } from './supplies.ts';

/** Closed switches from one pole of a supply to another, in order, and the other supplies that the way leads through. */
export interface ShortWay {
  readonly switches: readonly number[];
  readonly supplies: readonly number[];
}

interface Link {
  readonly node: number;
  readonly part: number;
  readonly supply: number;
  /** What is gained in potential on the way, along each axis. */
  readonly gain: readonly number[];
}

/** How far a search got: where, what has been gained since the start, and where from. */
interface Place {
  readonly node: number;
  readonly gained: readonly number[];
  readonly before: Place | undefined;
  readonly by: Link | undefined;
}

/** Places of one search; a ring of supplies needs a few for each of its conductors. */
const MOST_PLACES = 20_000;

/** What joins nodes: closed switches, and where `across` is set the other supplies and earth, as joined supplies need it. */
function linksOf(machine: Machine, state: State, supply: number, across: boolean): Map<number, Link[]> {
  const { plan, axes } = machine;
  const links = new Map<number, Link[]>();
  const none = Array.from({ length: axes.count }, () => 0);
  const link = (a: number, b: number, part: number, through = -1, gain: readonly number[] = none): void => {
    const back = gain.map((volts) => -volts);
    for (const [one, other, gained] of [
      [a, b, gain],
      [b, a, back],
    ] as const) {
      const list = links.get(one) ?? [];
      list.push({ node: other, part, supply: through, gain: gained });
      links.set(one, list);
    }
  };
  for (const [a, b] of plan.joins) link(a, b, -1);
  plan.switches.forEach(({ a, b }, index) => {
    if (isClosed(machine, state.at, index)) link(a, b, index);
  });
  if (!across) return links;
  plan.supplies.forEach((other, index) => {
    const common = other.poles.at(-1)!;
    if (index !== supply) {
      for (const pole of polesThatHold(other, state.supplyOn[index] === 1)) {
        const gain = none.map((_, axis) => alongAxis(axes, pole, axis));
        if (pole !== common) link(common.node, pole.node, -1, index, gain);
      }
    }
    if (other.earthed) link(common.node, plan.nodes, -1);
  });
  return links;
}

const keyOf = (gained: readonly number[]): string => gained.map((volts) => volts.toFixed(3)).join();

/**
 * The shortest way from one pole of a supply to another that doesn't have the voltage between the two poles in it, so that
 * nothing limits the current; undefined when there is none.
 */
function wayBetween(
  machine: Machine,
  links: ReadonlyMap<number, readonly Link[]>,
  from: PlanPole,
  to: PlanPole,
): ShortWay | undefined {
  const { axes } = machine;
  const none = Array.from({ length: axes.count }, () => 0);
  const own = keyOf(none.map((_, axis) => alongAxis(axes, to, axis) - alongAxis(axes, from, axis)));
  const queue: Place[] = [{ node: from.node, gained: none, before: undefined, by: undefined }];
  const seen = new Set([`${from.node} ${keyOf(none)}`]);
  for (const place of queue) {
    if (place.node === to.node && keyOf(place.gained) !== own) return told(place);
    for (const link of links.get(place.node) ?? []) {
      const gained = place.gained.map((volts, axis) => volts + link.gain[axis]!);
      const key = `${link.node} ${keyOf(gained)}`;
      if (seen.has(key) || seen.size >= MOST_PLACES) continue;
      seen.add(key);
      queue.push({ node: link.node, gained, before: place, by: link });
    }
  }
  return undefined;
}

function told(end: Place): ShortWay {
  const switches: number[] = [];
  const supplies = new Set<number>();
  for (let place = end; place.by && place.before; place = place.before) {
    if (place.by.part >= 0) switches.unshift(place.by.part);
    if (place.by.supply >= 0) supplies.add(place.by.supply);
  }
  return { switches, supplies: [...supplies] };
}

/** How a supply is short-circuited: by closed contacts alone where that is so, else through the supplies it is joined to. */
export function shortWay(machine: Machine, state: State, supply: number): ShortWay | undefined {
  const { poles } = machine.plan.supplies[supply]!;
  for (const across of [false, true]) {
    const links = linksOf(machine, state, supply, across);
    for (const one of poles) {
      for (const other of poles) {
        if (one === other) continue;
        const way = wayBetween(machine, links, one, other);
        if (way) return way;
      }
    }
  }
  return undefined;
}
