/** Everything that can be wrong with a circuit, its acts and its faults, but for the drawing rules. */
import type { StatementOf } from '../../statement.ts';
import { notationProblems } from './notation.ts';
import { scenarioProblems } from './scenario.ts';
import { soundnessProblems } from './soundness.ts';

export const circuitProblems = { ...notationProblems, ...soundnessProblems, ...scenarioProblems };
export type CircuitProblemSaid = StatementOf<typeof circuitProblems>;
