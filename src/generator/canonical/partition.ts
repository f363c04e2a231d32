import type { Graph } from './graph.ts';

/** What may still be done: neighbours that may be looked at, and vertices copied. */
export interface Effort {
  left: number;
}

/**
 * An ordered division of the vertices into cells. A cell's colour is the number of vertices before it, so that dividing one
 * leaves the colours of the others as they are.
 */
export class Partition {
  /** The vertices, cell by cell. */
  readonly order: Int32Array;
  /** Of each vertex its place in `order`, and its colour. */
  private readonly at: Int32Array;
  readonly colours: Int32Array;
  /** The size of each cell, by its colour. */
  readonly sizes: Int32Array;
  cells: number;

  private constructor(from: Pick<Partition, 'order' | 'colours' | 'sizes' | 'cells'> & { at: Int32Array }) {
    this.order = from.order;
    this.at = from.at;
    this.colours = from.colours;
    this.sizes = from.sizes;
    this.cells = from.cells;
  }

  static of(cells: readonly (readonly number[])[]): Partition {
    const size = cells.reduce((sum, cell) => sum + cell.length, 0);
    const [order, at, colours, sizes] = [0, 1, 2, 3].map(() => new Int32Array(size)) as [
      Int32Array,
      Int32Array,
      Int32Array,
      Int32Array,
    ];
    let place = 0;
    for (const cell of cells) {
      const colour = place;
      sizes[colour] = cell.length;
      for (const vertex of cell) {
        order[place] = vertex;
        at[vertex] = place++;
        colours[vertex] = colour;
      }
    }
    return new Partition({ order, at, colours, sizes, cells: cells.length });
  }

  copy(effort: Effort): Partition {
    effort.left -= this.order.length;
    const { order, at, colours, sizes, cells } = this;
    return new Partition({
      order: order.slice(),
      at: at.slice(),
      colours: colours.slice(),
      sizes: sizes.slice(),
      cells,
    });
  }

  get isDiscrete(): boolean {
    return this.cells === this.order.length;
  }

  /** The colour of the first of the smallest cells that have more than one vertex; -1 where every vertex is alone. */
  get target(): number {
    let found = -1;
    for (let colour = 0; colour < this.order.length; colour += this.sizes[colour]!) {
      const size = this.sizes[colour]!;
      if (size > 1 && (found < 0 || size < this.sizes[found]!)) found = colour;
      if (size === 2) break;
    }
    return found;
  }

  /** The vertices of one colour. */
  cell(colour: number): Int32Array {
    return this.order.subarray(colour, colour + this.sizes[colour]!);
  }

  /** Whether a vertex is of this colour. */
  has(colour: number, vertex: number): boolean {
    return this.colours[vertex] === colour;
  }

  private swap(vertex: number, place: number): void {
    const other = this.order[place]!;
    const own = this.at[vertex]!;
    this.order[place] = vertex;
    this.at[vertex] = place;
    this.order[own] = other;
    this.at[other] = own;
  }

  /** Gives the vertex a cell of its own, before the others of its colour, and refines; see `refine`. */
  singleOut(vertex: number, graph: Graph, effort: Effort): number {
    const colour = this.colours[vertex]!;
    const size = this.sizes[colour]!;
    this.swap(vertex, colour);
    this.sizes[colour] = 1;
    this.sizes[colour + 1] = size - 1;
    for (let place = colour + 1; place < colour + size; place++)
      this.colours[this.order[place]!] = colour + 1;
    this.cells++;
    return this.refine(graph, [colour], effort);
  }

  /** The colours there are. */
  get all(): number[] {
    const all: number[] = [];
    for (let colour = 0; colour < this.order.length; colour += this.sizes[colour]!) all.push(colour);
    return all;
  }

  /**
   * Divides cells until all vertices of one have as many neighbours in each other cell (an equitable partition), going by the
   * cells that are given and by those that come of it (J. Hopcroft, 1971; of the parts of a cell the largest needn't be gone by).
   *
   * @returns a number that is the same for graphs and partitions that are the same but for the names of the vertices
   */
  refine(graph: Graph, cells: readonly number[], effort: Effort): number {
    const { order, colours, sizes } = this;
    const queue = [...cells];
    const waits = new Uint8Array(order.length);
    for (const colour of queue) waits[colour] = 1;
    const counts = new Int32Array(order.length);
    const hits = new Int32Array(order.length);
    effort.left -= order.length;
    let trace = 0;
    for (let next = 0; next < queue.length && !this.isDiscrete && effort.left > 0; next++) {
      const by = queue[next]!;
      waits[by] = 0;
      const touched: number[] = [];
      for (let place = by; place < by + sizes[by]!; place++) {
        const vertex = order[place]!;
        effort.left -= 1 + graph.from[vertex + 1]! - graph.from[vertex]!;
        for (let edge = graph.from[vertex]!; edge < graph.from[vertex + 1]!; edge++) {
          const other = graph.ends[edge]!;
          if (counts[other]!++ === 0) touched.push(other);
        }
      }
      const met: number[] = [];
      for (const vertex of touched) {
        const colour = colours[vertex]!;
        const size = sizes[colour]!;
        if (size === 1) continue;
        // Those that are touched to the end of their cell.
        if (hits[colour]!++ === 0) met.push(colour);
        this.swap(vertex, colour + size - hits[colour]!);
      }
      met.sort((one, other) => one - other);
      for (const colour of met) {
        trace = (Math.imul(trace, 31) + by * 7 + colour) | 0;
        trace = this.divide(colour, hits[colour]!, counts, queue, waits, trace);
        hits[colour] = 0;
      }
      for (const vertex of touched) counts[vertex] = 0;
    }
    return trace;
  }

  /** Divides one cell by the counts of its vertices, of which all but the last `hit` are 0. */
  private divide(
    colour: number,
    hit: number,
    counts: Int32Array,
    queue: number[],
    waits: Uint8Array,
    before: number,
  ): number {
    const { order, at, colours, sizes } = this;
    const size = sizes[colour]!;
    const end = colour + size;
    if (hit > 1) {
      const tail = order.subarray(end - hit, end).sort((one, other) => counts[one]! - counts[other]!);
      for (let place = 0; place < hit; place++) at[tail[place]!] = end - hit + place;
    }
    let trace = before;
    let largest = colour;
    const parts: number[] = [];
    for (let start = colour; start < end; ) {
      const count = counts[order[start]!]!;
      let stop = start + 1;
      if (start === colour && hit < size) stop = end - hit;
      else while (stop < end && counts[order[stop]!] === count) stop++;
      trace = (Math.imul(trace, 31) + count * 5 + (stop - start)) | 0;
      parts.push(start);
      sizes[start] = stop - start;
      if (start !== colour) {
        for (let place = start; place < stop; place++) colours[order[place]!] = start;
        this.cells++;
      }
      if (sizes[start]! > sizes[largest]!) largest = start;
      start = stop;
    }
    if (parts.length === 1) return trace;
    const already = waits[colour] === 1;
    for (const part of parts) {
      if (waits[part] === 1 || (!already && part === largest)) continue;
      waits[part] = 1;
      queue.push(part);
    }
    return trace;
  }
}
