import type { Circuit } from '../../shared/circuit.ts';
import type { Question } from '../../shared/question.ts';
import { fingerprint } from '../generator/index.ts';
import { completed } from './wiring-choices.ts';

/** None where somebody's own circuit, or a choice of theirs, can't even be put together: it is marked and run nowhere. */
function fingerprints(make: () => Circuit): readonly string[] {
  try {
    return [fingerprint(make())];
  } catch {
    return [];
  }
}

/**
 * The circuits of which a mark of this question tells something: the one asked about, and of a wiring also what each of its
 * choices makes of it. By fingerprint, so that renaming doesn't get round it.
 */
export const circuitsTold = (question: Question): readonly string[] => [
  ...fingerprints(() => question.circuit),
  ...(question.kind === 'wiring'
    ? [...question.choices.keys()].flatMap((choice) => fingerprints(() => completed(question, choice)))
    : []),
];
