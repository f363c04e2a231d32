import type { Circuit } from '../../../shared/circuit.ts';
import { type Incidence, incidenceOf } from '../incidence.ts';
import { digestOf } from './digest.ts';
import { graphOf } from './graph.ts';
import { type Effort, Partition } from './partition.ts';
import { quotient, solve } from './search.ts';

/**
 * How many neighbours are looked at, and vertices gone over, for one circuit: some tenths of a second. A generated circuit takes a few
 * thousand. A circuit that needs more was made by somebody who wants it to.
 */
export const MOST_EFFORT = 5_000_000;

export interface CanonicalForm {
  /**
   * Whether it is equal for two circuits exactly when they are the same circuit. Otherwise telling them apart would take more
   * effort than is allowed: it is the same for the same circuit still, and may be the same for others as well.
   */
  readonly whole: boolean;
  readonly text: string;
}

/** The vertices by kind, the kinds in order. */
function byKind(kinds: readonly string[]): readonly (readonly [kind: string, vertices: readonly number[]])[] {
  const classes = new Map<string, number[]>();
  kinds.forEach((kind, vertex) => {
    const list = classes.get(kind);
    if (list) list.push(vertex);
    else classes.set(kind, [vertex]);
  });
  return [...classes].sort(([one], [other]) => (one < other ? -1 : 1));
}

export function formOf({ kinds, edges }: Incidence, most: number = MOST_EFFORT): CanonicalForm {
  const graph = graphOf(edges);
  const classes = byKind(kinds);
  const table = classes.map(([kind, { length }]) => `${kind} x${length}`).join('\n');
  const partition = Partition.of(classes.map(([, vertices]) => vertices));
  // Refining once is always done: that takes little more than reading the circuit.
  partition.refine(graph, partition.all, { left: Number.POSITIVE_INFINITY });
  const effort: Effort = { left: most };
  const told = quotient(graph, partition);
  const solved = solve(graph, partition, effort, told);
  return { whole: solved !== null, text: `${table}\n${(solved?.form ?? told).join(' ')}` };
}

/**
 * One text for all circuits that are the same up to designations, texts, colours, the order of paths, devices and sheets, and
 * which pole of a relay is which.
 */
export const canonicalForm = (circuit: Circuit): CanonicalForm => formOf(incidenceOf(circuit));

/**
 * A short text that is the same for the same circuit, however its devices are named and its paths ordered. Circuits that can't
 * be told apart with the effort that is allowed count as one (and their text begins with ~): nobody gains by sending such.
 */
export function fingerprint(circuit: Circuit): string {
  const { whole, text } = canonicalForm(circuit);
  return `${whole ? '' : '~'}${digestOf(text)}`;
}
