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

const around = (vertex: number, colours: readonly number[], edges: Edges): string =>
  edges[vertex]!.map((other) => colours[other]!)
    .sort((one, other) => one - other)
    .join();

/** Members of one class by a key, the keys in order. */
function divided(members: readonly number[], keyOf: (vertex: number) => string): number[][] {
  const classes = new Map<string, number[]>();
  for (const vertex of members) {
    const key = keyOf(vertex);
    const list = classes.get(key);
    if (list) list.push(vertex);
    else classes.set(key, [vertex]);
  }
  if (classes.size === 1) return [[...members]];
  return [...classes].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, list]) => list);
}

/**
 * Refines an ordered division of the vertices until all of one class have equally coloured neighbours. A class's colour
 * is the number of vertices before it, so that dividing one leaves the colours of the others as they are.
 */
function refine(classes: readonly (readonly number[])[], edges: Edges): number[] {
  const colours: number[] = new Array(edges.length).fill(0);
  let begin = 0;
  let open: { members: readonly number[]; begin: number }[] = [];
  for (const members of classes) {
    for (const vertex of members) colours[vertex] = begin;
    open.push({ members, begin });
    begin += members.length;
  }
  for (let changed = true; changed; ) {
    changed = false;
    const next: typeof open = [];
    for (const { members, begin: first } of open) {
      // A vertex alone in its class can't be told apart any further.
      if (members.length === 1) continue;
      const split = divided(members, (vertex) => around(vertex, colours, edges));
      let start = first;
      for (const part of split) {
        if (start !== first) for (const vertex of part) colours[vertex] = start;
        next.push({ members: part, begin: start });
        start += part.length;
      }
      if (split.length > 1) changed = true;
    }
    open = next;
  }
  return colours;
}

/** Everything that an equitable colouring says: for each colour how many vertices have it and what is around each. */
function quotient(colours: readonly number[], edges: Edges): string {
  const sizes = new Map<number, number>();
  const one = new Map<number, number>();
  colours.forEach((colour, vertex) => {
    sizes.set(colour, (sizes.get(colour) ?? 0) + 1);
    if (!one.has(colour)) one.set(colour, vertex);
  });
  return [...sizes]
    .sort(([a], [b]) => a - b)
    .map(([colour, size]) => `${colour}x${size}:${around(one.get(colour)!, colours, edges)}`)
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
  const ordered = [...classes].sort(([a], [b]) => a - b);
  const names = ordered.map(([colour, members]) => `${colour}x${members.length}`).join();
  const lists = ordered.map(([, members]) => members);
  let target = -1;
  lists.forEach(({ length }, index) => {
    if (length > 1 && (target < 0 || length < lists[target]!.length)) target = index;
  });
  if (target < 0) return `${names}{${quotient(refine(lists, inner), inner)}}`;
  let least: string | undefined;
  for (const vertex of lists[target]!) {
    const others = lists[target]!.filter((other) => other !== vertex);
    const found = form(
      refine([...lists.slice(0, target), [vertex], others, ...lists.slice(target + 1)], inner),
      inner,
    );
    if (least === undefined || found < least) least = found;
  }
  return `${names}{${least}}`;
}

/** Equal for two circuits exactly when they are the same circuit; see above. */
export function canonicalForm(circuit: Circuit): string {
  const { kinds, edges } = incidenceOf(circuit);
  const classes = divided([...kinds.keys()], (vertex) => kinds[vertex]!);
  const table = classes.map(([first = 0, ...rest]) => `${kinds[first]} x${rest.length + 1}`).join('\n');
  return `${table}\n${form(refine(classes, edges), edges)}`;
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
