import type { Circuit } from '../../../shared/circuit.ts';
import type { Question } from '../../../shared/question.ts';
import { fingerprint } from '../../generator/index.ts';
import { circuitsTold } from '../../questions/index.ts';

/** The circuit stands on a paper that its learner can still work on: it is neither marked nor run. */
export class OnOpenPaper extends RangeError {
  /** Its fingerprint. */
  readonly circuit: string;

  constructor(circuit: string) {
    super(circuit);
    this.circuit = circuit;
  }
}

/** @throws OnOpenPaper */
export function checkCircuit(guarded: ReadonlySet<string>, circuit: Circuit): void {
  if (guarded.size === 0) return;
  const found = fingerprint(circuit);
  if (guarded.has(found)) throw new OnOpenPaper(found);
}

/** @throws OnOpenPaper */
export function checkQuestion(guarded: ReadonlySet<string>, question: Question): void {
  if (guarded.size === 0) return;
  const found = circuitsTold(question).find((circuit) => guarded.has(circuit));
  if (found !== undefined) throw new OnOpenPaper(found);
}
