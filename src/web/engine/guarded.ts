import type { Circuit } from '../../../shared/circuit.ts';
import type { Question } from '../../../shared/question.ts';
import { fingerprint } from '../../generator/index.ts';
import { circuitsTold } from '../../questions/index.ts';
import { OnOpenPaper } from './on-open-paper.ts';

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
