import type { Circuit } from '../../shared/circuit.ts';
import type { Question } from '../../shared/question.ts';
import { fingerprint } from '../generator/index.ts';
import { kindOf } from './registry.ts';

/** None where somebody's own circuit, or a choice of theirs, can't even be put together: it is marked and run nowhere. */
function fingerprints(make: () => Circuit): readonly string[] {
  try {
    return [fingerprint(make())];
  } catch {
    return [];
  }
}

/**
 * The circuits of which a mark of this question tells something: the one asked about, and those that its kind adds. By fingerprint, so that renaming doesn't get round it.
 */
export const circuitsTold = (question: Question): readonly string[] => [
  ...fingerprints(() => question.circuit),
  ...(kindOf(question.kind).alsoTold?.(question) ?? []).flatMap(fingerprints),
];
