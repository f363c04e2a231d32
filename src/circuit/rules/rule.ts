import type { Circuit } from '../../../shared/circuit.ts';
import type { RuleProblemSaid, Said } from '../../words/index.ts';
import type { Found } from '../findings.ts';
import type { CircuitView } from '../view.ts';

/** One rule of drawing. Further floors add their own with the same shape. */
export interface Rule<S extends Said = Said> {
  /** Also the code of its findings in docs/errors.md. */
  readonly name: string;
  /** Everything in the circuit that breaks it. The circuit needn't be sound. */
  check(circuit: Circuit, view: CircuitView): readonly Found<S>[];
}

/** A rule of ours: what it says, the catalogue has. */
export type DrawingRule = Rule<RuleProblemSaid>;
export type Broken = Found<RuleProblemSaid>;
