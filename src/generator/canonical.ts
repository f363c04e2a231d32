/**
 * The canonical form of a circuit: one text for all circuits that are the same up to designations, texts, colours, the
 * order of paths, devices and sheets, and which pole of a relay is which. Colour refinement, and where that leaves
 * vertices alike, individualisation: each is singled out in turn and the least result taken (B. McKay, Practical graph
 * isomorphism, 1981). Vertices of one kind that are already told apart fall out of the graph first, and what is left is
 * dealt with part by part, so that many equal branches cost no more than one.
 */
import type { Circuit } from '../../shared/circuit.ts';
import { incidenceOf } from './incidence.ts';

type Edges = readonly (readonly number[])[];

/** Ranks texts: equal texts get equal numbers, in the order of the texts. */
function ranked(texts: readonly string[]): { ranks: number[]; count: number } {
  const order = new Map([...new Set(texts)].sort().map((text, rank) => [text, rank]));
  return { ranks: texts.map((text) => order.get(text)!), count: order.size };
}

/** Refines colours until all vertices of one colour have equally coloured neighbours. */
function refine(colours: readonly number[], edges: Edges): number[] {
  let now = [...colours];
  let count = new Set(now).size;
  for (;;) {
    const next = ranked(
      edges.map((list, vertex) => {
        const around = list.map((other) => now[other]!).sort((a, b) => a - b);
        // The old colour leads, padded, so that refining never changes the order of what was told apart before.
        return `${String(now[vertex]).padStart(6, '0')} ${around.join()}`;
      }),
    );
    now = next.ranks;
    if (next.count === count) return now;
    count = next.count;
  }
}

/** Everything that an equitable colouring says: for each colour how many vertices have it and what is around each. */
function quotient(colours: readonly number[], edges: Edges): string {
  const cells = new Map<number, { size: number; around: string }>();
  colours.forEach((colour, vertex) => {
    const cell = cells.get(colour);
    if (cell) cell.size++;
    else {
      const around = edges[vertex]!.map((other) => colours[other]!).sort((a, b) => a - b);
      cells.set(colour, { size: 1, around: around.join() });
    }
  });
  return [...cells]
    .sort(([a], [b]) => a - b)
    .map(([colour, { size, around }]) => `${colour}x${size}:${around}`)
    .join(';');
}

/** The connected parts of what is left when vertices of a colour of their own are taken out. */
function parts(colours: readonly number[], edges: Edges): number[][] {
  const sizes = new Map<number, number>();
  for (const colour of colours) sizes.set(colour, (sizes.get(colour) ?? 0) + 1);
  const alike = colours.map((colour) => sizes.get(colour)! > 1);
  const seen = new Uint8Array(colours.length);
  const found: number[][] = [];
  for (let start = 0; start < colours.length; start++) {
    if (!alike[start] || seen[start]) continue;
    const part = [start];
    seen[start] = 1;
    for (const vertex of part) {
      for (const other of edges[vertex]!) {
        if (!alike[other] || seen[other]) continue;
        seen[other] = 1;
        part.push(other);
      }
    }
    found.push(part);
  }
  return found;
}

/** The canonical text of a coloured graph whose colours are already equitable. */
function form(colours: readonly number[], edges: Edges): string {
  const rest = parts(colours, edges).map((part) => partForm(part, colours, edges));
  return `${quotient(colours, edges)}[${rest.sort().join('|')}]`;
}

/** The part as a graph of its own, each vertex of its smallest colour class singled out in turn. */
function partForm(part: readonly number[], colours: readonly number[], edges: Edges): string {
  const place = new Map(part.map((vertex, index) => [vertex, index]));
  const own = part.map((vertex) => colours[vertex]!);
  const inner = part.map((vertex) =>
    edges[vertex]!.flatMap((other) => {
      const at = place.get(other);
      return at === undefined ? [] : [at];
    }),
  );
  const classes = new Map<number, number[]>();
  own.forEach((colour, vertex) => {
    const list = classes.get(colour);
    if (list) list.push(vertex);
    else classes.set(colour, [vertex]);
  });
  const head = [...classes].sort(([a], [b]) => a - b);
  const names = head.map(([colour, members]) => `${colour}x${members.length}`).join();
  // Colours of the whole drawing lead; inside the part they are numbered afresh, twice over to leave room.
  const small = new Map(head.map(([colour], index) => [colour, 2 * index + 1]));
  const local = own.map((colour) => small.get(colour)!);
  if (head.every(([, members]) => members.length === 1)) return `${names}{${quotient(local, inner)}}`;
  const target = head.reduce((best, entry) => {
    const size = entry[1].length;
    return size > 1 && (best[1].length < 2 || size < best[1].length) ? entry : best;
  });
  let least: string | undefined;
  for (const vertex of target[1]) {
    const single = local.map((colour, index) => (index === vertex ? colour - 1 : colour));
    const found = form(refine(single, inner), inner);
    if (least === undefined || found < least) least = found;
  }
  return `${names}{${least}}`;
}

/** Equal for two circuits exactly when they are the same circuit; see above. */
export function canonicalForm(circuit: Circuit): string {
  const { kinds, edges } = incidenceOf(circuit);
  const { ranks } = ranked(kinds);
  const table = [...new Set(kinds)].sort().join('\n');
  return `${table}\n${form(refine(ranks, edges), edges)}`;
}

/** Four mixed 32-bit lanes over the code units, as 32 hexadecimal digits; the mixing constants are MurmurHash3's. */
function digest(text: string): string {
  const lanes = [0x9e3779b9, 0x243f6a88, 0xb7e15162, 0x85ebca6b];
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    for (let lane = 0; lane < 4; lane++) {
      const mixed = Math.imul(
        lanes[lane]! ^ (code + lane * 0x10001),
        lane % 2 === 0 ? 0xcc9e2d51 : 0x1b873593,
      );
      lanes[lane] = ((mixed << (13 + lane)) | (mixed >>> (19 - lane))) + (lanes[(lane + 1) % 4]! >>> 7);
    }
  }
  return lanes
    .map((lane) => {
      let h = lane ^ text.length;
      h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
      h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
      return ((h ^ (h >>> 16)) >>> 0).toString(16).padStart(8, '0');
    })
    .join('');
}

/** A short text that is the same for the same circuit, however its devices are named and its paths ordered. */
export const fingerprint = (circuit: Circuit): string => digest(canonicalForm(circuit));
