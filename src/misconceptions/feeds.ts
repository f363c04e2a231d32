/**
 * Which contacts feed a load: those on some way from a line pole to it that comes to no place twice. Contacts that hang
 * on the same conductor and lead elsewhere are not among them. Found for all loads at once: the circuit's switches as a
 * graph fall into blocks (J. Hopcroft and R. Tarjan, Efficient algorithms for graph manipulation, 1973), and the ways
 * from the poles to a node use the blocks on the one way between the two in the tree of blocks.
 */
import { once } from '../graph/index.ts';
import type { Plan } from '../solver/index.ts';

/** Switches on the way to a load: one that every way goes through, or several beside and behind one another. */
export interface Group {
  readonly switches: readonly number[];
  readonly series: boolean;
}

export interface Feeds {
  /** Indices of the switches that feed a load. */
  ofLoad(load: number): readonly number[];
  /** The same in groups that lie one after the other on the way, the supply's first. */
  groupsOf(load: number): readonly Group[];
  /** Indices of the mechanisms whose contacts feed a load. */
  mechanismsOf(load: number): ReadonlySet<number>;
}

type Edge = readonly [number, number];

/** The circuit's places: all line poles are one, the root; a return is none, and is never passed through. */
function placesOf(plan: Plan): { readonly root: number; readonly place: Int32Array } {
  const root = plan.nodes;
  const place = Int32Array.from({ length: plan.nodes + 1 }, (_, node) => node);
  for (const { poles } of plan.supplies) {
    for (const { node } of poles) place[node] = root;
    place[poles.at(-1)!.node] = -1;
  }
  return { root, place };
}

/** The edges at each place. */
function edgesAt(places: number, edges: readonly Edge[]): readonly number[][] {
  const at: number[][] = Array.from({ length: places }, () => []);
  edges.forEach(([a, b], edge) => {
    if (a < 0 || b < 0) return;
    at[a]!.push(edge);
    at[b]!.push(edge);
  });
  return at;
}

function blocksOf(plan: Plan) {
  const { root, place } = placesOf(plan);
  const edges = [
    ...plan.switches.map(({ a, b }): Edge => [place[a]!, place[b]!]),
    ...plan.joins.map(([a, b]): Edge => [place[a]!, place[b]!]),
  ];
  const at = edgesAt(plan.nodes + 1, edges);
  const found = new Int32Array(plan.nodes + 1).fill(-1);
  const low = new Int32Array(plan.nodes + 1);
  const next = new Int32Array(plan.nodes + 1);
  const came = new Int32Array(plan.nodes + 1).fill(-1);
  const blockAbove = new Int32Array(plan.nodes + 1).fill(-1);
  const members: number[][] = [];
  const tops: number[] = [];
  const open: number[] = [];
  const way = [root];
  let count = 0;
  found[root] = low[root] = count++;
  const across = (edge: number, from: number): number => {
    const [a, b] = edges[edge]!;
    return a === from ? b : a;
  };
  for (;;) {
    const here = way.at(-1)!;
    const edge = at[here]![next[here]!];
    if (edge !== undefined) {
      next[here]!++;
      if (edge === came[here]) continue;
      const there = across(edge, here);
      if (found[there] === -1) {
        open.push(edge);
        came[there] = edge;
        found[there] = low[there] = count++;
        way.push(there);
      } else if (found[there]! < found[here]!) {
        open.push(edge);
        low[here] = Math.min(low[here]!, found[there]!);
      }
      continue;
    }
    way.pop();
    if (here === root) break;
    const edgeUp = came[here]!;
    const above = across(edgeUp, here);
    low[above] = Math.min(low[above]!, low[here]!);
    if (low[here]! < found[above]!) continue;
    const block: number[] = [];
    for (let edgeOut = open.pop(); edgeOut !== undefined; edgeOut = open.pop()) {
      block.push(edgeOut);
      for (const end of edges[edgeOut]!) if (end !== above) blockAbove[end] = members.length;
      if (edgeOut === edgeUp) break;
    }
    members.push(block);
    tops.push(above);
  }
  return { place, blockAbove, members, tops };
}

function makeFeeds(plan: Plan): Feeds {
  const { place, blockAbove, members, tops } = blocksOf(plan);
  const toNode = (node: number): Group[] => {
    const groups: Group[] = [];
    // A return has no place, and above the root there is no block: both end the way.
    for (let here = place[node]!; blockAbove[here]! >= 0; ) {
      const block = blockAbove[here]!;
      const switches = members[block]!.filter((edge) => edge < plan.switches.length);
      if (switches.length > 0) groups.push({ switches, series: members[block]!.length === 1 });
      here = tops[block]!;
    }
    return groups.reverse();
  };
  const groups = new Map<number, readonly Group[]>();
  const groupsOf = (load: number): readonly Group[] => {
    const before = groups.get(load);
    if (before) return before;
    const { a, b } = plan.loads[load]!;
    const made = [...toNode(a), ...toNode(b)];
    groups.set(load, made);
    return made;
  };
  const known = new Map<number, readonly number[]>();
  const ofLoad = (load: number): readonly number[] => {
    const before = known.get(load);
    if (before) return before;
    const switches = [...new Set(groupsOf(load).flatMap((group) => group.switches))];
    known.set(load, switches);
    return switches;
  };
  return {
    ofLoad,
    groupsOf,
    mechanismsOf: (load) =>
      new Set(
        ofLoad(load).flatMap((index) =>
          plan.switches[index]!.mechanism < 0 ? [] : [plan.switches[index]!.mechanism],
        ),
      ),
  };
}

/** The feeds of a plan, worked out once for it. */
export const feedsOf = once(makeFeeds);
