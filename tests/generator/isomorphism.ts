/** Whether two coloured graphs are the same, found by trying: slow, plain, and with nothing in common with the canonical form. */
import type { Incidence } from '../../src/generator/incidence.ts';

export function isomorphic(one: Incidence, other: Incidence): boolean {
  const size = one.kinds.length;
  if (size !== other.kinds.length) return false;
  const label = ({ kinds, edges }: Incidence, vertex: number): string =>
    `${kinds[vertex]} | ${edges[vertex]!.map((to) => kinds[to]!)
      .sort()
      .join()}`;
  const mine = Array.from({ length: size }, (_, vertex) => label(one, vertex));
  const theirs = Array.from({ length: size }, (_, vertex) => label(other, vertex));
  if ([...mine].sort().join('\n') !== [...theirs].sort().join('\n')) return false;
  const to = new Int32Array(size).fill(-1);
  const from = new Int32Array(size).fill(-1);
  const links = (edges: readonly number[], vertex: number): number =>
    edges.filter((end) => end === vertex).length;
  const fits = (vertex: number, image: number): boolean =>
    mine[vertex] === theirs[image] &&
    from[image] === -1 &&
    one.edges[vertex]!.every(
      (next) => to[next] === -1 || links(one.edges[vertex]!, next) === links(other.edges[image]!, to[next]!),
    );
  // Always goes on beside what is placed already, where a mistake shows at once.
  const next = (): number => {
    for (let vertex = 0; vertex < size; vertex++)
      if (to[vertex] === -1 && one.edges[vertex]!.some((end) => to[end] !== -1)) return vertex;
    return to.indexOf(-1);
  };
  let tries = 0;
  const place = (): boolean => {
    const vertex = next();
    if (vertex === -1) return true;
    if (++tries > 2_000_000) throw new Error('too many tries');
    const near = one.edges[vertex]!.find((end) => to[end] !== -1);
    const images =
      near === undefined ? theirs.map((_, image) => image) : [...new Set(other.edges[to[near]!]!)];
    for (const image of images) {
      if (!fits(vertex, image)) continue;
      to[vertex] = image;
      from[image] = vertex;
      if (place()) return true;
      to[vertex] = -1;
      from[image] = -1;
    }
    return false;
  };
  return place();
}
