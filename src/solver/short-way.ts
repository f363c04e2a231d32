/** The way that the current of a short circuit takes. */
import { alongAxis } from './axes.ts';
import type { Machine } from './machine.ts';
import { isClosed } from './network.ts';
import type { State } from './state.ts';
import { polesThatHold } from './supplies.ts';

/** A ring that nothing limits the current in: its closed switches in order, and its supplies. */
export interface ShortWay {
  readonly switches: readonly number[];
  readonly supplies: readonly number[];
}

interface Link {
  readonly to: number;
  /** Index of a closed switch, or -1. */
  readonly part: number;
  /** Index of a supply that is passed, or -1. */
  readonly supply: number;
  /** What is gained in potential, along each axis. */
  readonly gain: readonly number[];
}

interface Place {
  readonly node: number;
  readonly potential: readonly number[];
  readonly before: Place | undefined;
  readonly by: Link | undefined;
}

type Links = ReadonlyMap<number, readonly Link[]>;

const SAME = 1e-6;

/** What joins nodes without resistance: closed switches, and where `supplies` is set these and earth. */
function linksOf(machine: Machine, state: State, supplies: boolean): Links {
  const { plan, axes } = machine;
  const links = new Map<number, Link[]>();
  const none = Array.from({ length: axes.count }, () => 0);
  const link = (a: number, b: number, part: number, supply = -1, gain: readonly number[] = none): void => {
    for (const [from, to, gained] of [
      [a, b, gain],
      [b, a, gain.map((volts) => -volts)],
    ] as const) {
      const list = links.get(from) ?? [];
      list.push({ to, part, supply, gain: gained });
      links.set(from, list);
    }
  };
  for (const [a, b] of plan.joins) link(a, b, -1);
  plan.switches.forEach(({ a, b }, index) => {
    if (isClosed(machine, state.at, index)) link(a, b, index);
  });
  if (!supplies) return links;
  plan.supplies.forEach((supply, index) => {
    const common = supply.poles.at(-1)!;
    for (const pole of polesThatHold(supply, state.supplyOn[index] === 1)) {
      const gain = none.map((_, axis) => alongAxis(axes, pole, axis));
      if (pole !== common) link(common.node, pole.node, -1, index, gain);
    }
    if (supply.earthed) link(common.node, plan.nodes, -1);
  });
  return links;
}

const wayTo = (place: Place): Link[] => {
  const way: Link[] = [];
  for (let at: Place | undefined = place; at?.by; at = at.before) way.unshift(at.by);
  return way;
};

const told = (links: readonly Link[], supply?: number): ShortWay => ({
  switches: links.flatMap(({ part }) => (part >= 0 ? [part] : [])),
  supplies: [
    ...new Set([
      ...(supply === undefined ? [] : [supply]),
      ...links.flatMap((link) => (link.supply >= 0 ? [link.supply] : [])),
    ]),
  ],
});

/** Breadth first from a node; `meets` is told of each link that comes to a place known already and may end the search. */
function search<T>(
  links: Links,
  start: Place,
  meets: (from: Place, link: Link, known: Place | undefined) => T | undefined,
): T | undefined {
  const known = new Map([[start.node, start]]);
  const queue = [start];
  for (const place of queue) {
    for (const link of links.get(place.node) ?? []) {
      const there = known.get(link.to);
      const found = meets(place, link, there);
      if (found !== undefined) return found;
      if (there) continue;
      const potential = place.potential.map((volts, axis) => volts + link.gain[axis]!);
      const next = { node: link.to, potential, before: place, by: link };
      known.set(link.to, next);
      queue.push(next);
    }
  }
  return undefined;
}

/** A way of closed switches alone between two poles of one supply, from its first pole on; undefined when there is none. */
export function shortedByContacts(machine: Machine, state: State, supply: number): ShortWay | undefined {
  const links = linksOf(machine, state, false);
  const { poles } = machine.plan.supplies[supply]!;
  for (const one of poles) {
    for (const other of poles) {
      if (one === other) continue;
      if (one.node === other.node) return told([], supply);
      const start: Place = { node: one.node, potential: [], before: undefined, by: undefined };
      const way = search(links, start, (from, link) =>
        link.to === other.node ? [...wayTo(from), link] : undefined,
      );
      if (way) return told(way, supply);
    }
  }
  return undefined;
}

/** A ring of supplies that are joined to each other and whose voltages don't add up to nothing. */
export function shortedBySupplies(machine: Machine, state: State, supply: number): ShortWay | undefined {
  const start: Place = {
    node: machine.plan.supplies[supply]!.poles.at(-1)!.node,
    potential: Array.from({ length: machine.axes.count }, () => 0),
    before: undefined,
    by: undefined,
  };
  return search(linksOf(machine, state, true), start, (from, link, known) => {
    const fits = known?.potential.every(
      (volts, axis) => Math.abs(from.potential[axis]! + link.gain[axis]! - volts) < SAME,
    );
    if (!known || fits) return undefined;
    const [there, back] = [[...wayTo(from), link], wayTo(known)];
    let shared = 0;
    while (shared < back.length && there[shared] === back[shared]) shared++;
    return told([...there.slice(shared), ...back.slice(shared).reverse()]);
  });
}
