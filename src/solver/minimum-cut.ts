/** The smallest cut of a graph of contacts: as many ways as fit beside one another, found one by one (Dinic 1970). */

/** An undirected graph in which an edge takes one unit (an open contact) or any number. */
export class CutGraph {
  private readonly heads: number[] = [];
  private readonly rooms: number[] = [];
  private readonly parts: number[] = [];
  private readonly arcsAt: number[][];
  private room = new Int32Array(0);
  private level = new Int32Array(0);

  constructor(nodes: number) {
    this.arcsAt = Array.from({ length: nodes }, () => []);
  }

  /** `part` names the edge in a cut; without room for more than one unit it can be cut. */
  link(a: number, b: number, part: number, cuttable: boolean): void {
    if (a === b) return;
    const room = cuttable ? 1 : UNCUTTABLE;
    for (const [from, to] of [
      [a, b],
      [b, a],
    ] as const) {
      this.arcsAt[from]!.push(this.heads.length);
      this.heads.push(to);
      this.rooms.push(room);
      this.parts.push(part);
    }
  }

  /**
   * The parts of a smallest cut that parts the sources from the goals, of equal ones that nearest the goals; undefined
   * when there is a way that can't be cut.
   *
   * @param passable - whether a way may lead on from a node, a source included
   * @param usable - whether an edge counts, by its part
   */
  cut(
    sources: readonly number[],
    goals: ReadonlySet<number>,
    passable: (node: number) => boolean,
    usable: (part: number) => boolean,
  ): number[] | undefined {
    if (sources.some((source) => goals.has(source))) return undefined;
    this.room = Int32Array.from(this.rooms);
    for (;;) {
      if (!this.levels(sources, goals, passable, usable)) break;
      const grown = this.augment(sources, goals, passable, usable);
      if (grown >= UNCUTTABLE / 2) return undefined;
    }
    return this.nearest(goals, passable, usable);
  }

  /** Breadth first from the sources; whether a goal is reached. */
  private levels(
    sources: readonly number[],
    goals: ReadonlySet<number>,
    passable: (node: number) => boolean,
    usable: (part: number) => boolean,
  ): boolean {
    this.level = new Int32Array(this.arcsAt.length).fill(-1);
    const queue = [...sources];
    for (const source of sources) this.level[source] = 0;
    let reached = false;
    for (const node of queue) {
      if (goals.has(node)) {
        reached = true;
        continue;
      }
      if (!passable(node)) continue;
      for (const arc of this.arcsAt[node]!) {
        const to = this.heads[arc]!;
        if (this.room[arc]! <= 0 || !usable(this.parts[arc]!) || this.level[to] !== -1) continue;
        this.level[to] = this.level[node]! + 1;
        queue.push(to);
      }
    }
    return reached;
  }

  /** Fills all ways of this level; without recursion, for long ways. Returns the largest way found. */
  private augment(
    sources: readonly number[],
    goals: ReadonlySet<number>,
    passable: (node: number) => boolean,
    usable: (part: number) => boolean,
  ): number {
    const next = new Int32Array(this.arcsAt.length);
    let largest = 0;
    for (const source of sources) {
      const way: number[] = [];
      let node = source;
      for (;;) {
        if (goals.has(node)) {
          const amount = way.reduce((least, arc) => Math.min(least, this.room[arc]!), UNCUTTABLE);
          largest = Math.max(largest, amount);
          if (amount >= UNCUTTABLE / 2) return largest;
          for (const arc of way) {
            this.room[arc] = this.room[arc]! - amount;
            this.room[arc ^ 1] = this.room[arc ^ 1]! + amount;
          }
          way.length = 0;
          node = source;
          continue;
        }
        const arcs = passable(node) ? this.arcsAt[node]! : [];
        let arc = -1;
        for (; next[node]! < arcs.length; next[node] = next[node]! + 1) {
          const candidate = arcs[next[node]!]!;
          const to = this.heads[candidate]!;
          if (
            this.room[candidate]! > 0 &&
            usable(this.parts[candidate]!) &&
            this.level[to] === this.level[node]! + 1
          ) {
            arc = candidate;
            break;
          }
        }
        if (arc >= 0) {
          way.push(arc);
          node = this.heads[arc]!;
          continue;
        }
        const back = way.pop();
        if (back === undefined) break;
        node = this.heads[back ^ 1]!;
        next[node] = next[node]! + 1;
      }
    }
    return largest;
  }

  /** Searched backwards from the goals along what still has room: the cut is where that ends. */
  private nearest(
    goals: ReadonlySet<number>,
    passable: (node: number) => boolean,
    usable: (part: number) => boolean,
  ): number[] {
    const seen = new Set(goals);
    const queue = [...goals];
    for (const node of queue) {
      for (const arc of this.arcsAt[node]!) {
        const from = this.heads[arc]!;
        // Room on the way towards the goal: from `from` to `node`.
        if (seen.has(from) || !usable(this.parts[arc]!) || this.room[arc ^ 1]! <= 0 || !passable(from))
          continue;
        seen.add(from);
        queue.push(from);
      }
    }
    const parts = new Set<number>();
    for (const node of seen) {
      for (const arc of this.arcsAt[node]!) {
        const from = this.heads[arc]!;
        if (!seen.has(from) && usable(this.parts[arc]!) && passable(from)) parts.add(this.parts[arc]!);
      }
    }
    return [...parts].sort((a, b) => a - b);
  }
}

const UNCUTTABLE = 1_000_000;
