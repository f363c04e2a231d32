/** The smallest cut of a graph of contacts: as many ways as fit beside one another, found one by one (Dinic 1970). */

/** What is to be parted, and the node and the part that are taken to be absent (-1: none). */
export interface Parting {
  readonly sources: readonly number[];
  readonly goals: ReadonlySet<number>;
  readonly without: number;
  readonly except: number;
}

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
   * when there is a way that can't be cut, or none smaller than `below`.
   */
  cut({ sources, goals, without, except }: Parting, below = Infinity): number[] | undefined {
    const starts = sources.filter((source) => source !== without);
    if (starts.some((source) => goals.has(source))) return undefined;
    this.room = Int32Array.from(this.rooms);
    const left = { sources: starts, goals, without, except };
    let total = 0;
    while (this.levels(left)) {
      total += this.augment(left);
      if (total >= Math.min(below, UNCUTTABLE)) return undefined;
    }
    return this.nearest(left);
  }

  /** A way from the sources to the goals that can't be cut, as its nodes; undefined when there is none. */
  firmWay(sources: readonly number[], goals: ReadonlySet<number>, except: number): number[] | undefined {
    const cameFrom = new Map<number, number>();
    const queue = [...sources];
    for (const source of sources) cameFrom.set(source, -1);
    for (const node of queue) {
      if (goals.has(node)) {
        const way: number[] = [];
        for (let at = node; at >= 0; at = cameFrom.get(at)!) way.push(at);
        return way;
      }
      for (const arc of this.arcsAt[node]!) {
        const to = this.heads[arc]!;
        if (this.rooms[arc]! < UNCUTTABLE || this.isLeftOut(arc, except) || cameFrom.has(to)) continue;
        cameFrom.set(to, node);
        queue.push(to);
      }
    }
    return undefined;
  }

  private isLeftOut(arc: number, except: number): boolean {
    return except >= 0 && this.parts[arc] === except;
  }

  /** Breadth first from the sources; whether a goal is reached. */
  private levels({ sources, goals, without, except }: Parting): boolean {
    this.level = new Int32Array(this.arcsAt.length).fill(-1);
    if (without >= 0) this.level[without] = -2;
    const queue = [...sources];
    for (const source of sources) this.level[source] = 0;
    let reached = false;
    for (const node of queue) {
      if (goals.has(node)) {
        reached = true;
        continue;
      }
      for (const arc of this.arcsAt[node]!) {
        const to = this.heads[arc]!;
        if (this.room[arc]! <= 0 || this.level[to] !== -1 || this.isLeftOut(arc, except)) continue;
        this.level[to] = this.level[node]! + 1;
        queue.push(to);
      }
    }
    return reached;
  }

  /** Fills all ways of this level; without recursion, for long ways. Returns what flows on them. */
  private augment({ sources, goals, except }: Parting): number {
    const tried = new Int32Array(this.arcsAt.length);
    let total = 0;
    for (const source of sources) {
      const way: number[] = [];
      let node = source;
      for (;;) {
        if (goals.has(node)) {
          const amount = way.reduce((least, arc) => Math.min(least, this.room[arc]!), UNCUTTABLE);
          total += amount;
          if (total >= UNCUTTABLE) return total;
          for (const arc of way) {
            this.room[arc] = this.room[arc]! - amount;
            this.room[arc ^ 1] = this.room[arc ^ 1]! + amount;
          }
          way.length = 0;
          node = source;
          continue;
        }
        const arcs = this.arcsAt[node]!;
        let arc = -1;
        for (; tried[node]! < arcs.length; tried[node] = tried[node]! + 1) {
          const candidate = arcs[tried[node]!]!;
          const to = this.heads[candidate]!;
          const next = this.room[candidate]! > 0 && this.level[to] === this.level[node]! + 1;
          if (next && !this.isLeftOut(candidate, except)) {
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
        tried[node] = tried[node]! + 1;
      }
    }
    return total;
  }

  /** Searched backwards from the goals along what still has room: the cut is where that ends. */
  private nearest({ goals, without, except }: Parting): number[] {
    const seen = new Set(goals);
    const queue = [...goals];
    for (const node of queue) {
      for (const arc of this.arcsAt[node]!) {
        const from = this.heads[arc]!;
        // Room on the way towards the goal: from `from` to `node`.
        const open = this.room[arc ^ 1]! > 0 && !this.isLeftOut(arc, except);
        if (from === without || seen.has(from) || !open) continue;
        seen.add(from);
        queue.push(from);
      }
    }
    const parts = new Set<number>();
    for (const node of seen) {
      for (const arc of this.arcsAt[node]!) {
        const from = this.heads[arc]!;
        if (from !== without && !seen.has(from) && !this.isLeftOut(arc, except)) parts.add(this.parts[arc]!);
      }
    }
    return [...parts].sort((a, b) => a - b);
  }
}

const UNCUTTABLE = 1_000_000;
