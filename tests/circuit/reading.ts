/** Short ways to read in tests. */
import { expect } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { Checked, Problem, ToldProblem } from '../../shared/problem.ts';
import { readCircuit } from '../../src/circuit/index.ts';
import { told } from '../support/in-english.ts';

/** Milliseconds that a test over many random cases may take on a busy machine. */
export const PATIENCE = 120_000;

/** The value; a refusal fails the test with its reasons. */
export function whole<T>(checked: Checked<T>): T {
  if (!checked.ok) expect.fail(checked.problems.map(oneLine).join('\n'));
  return checked.value;
}

export function problemsOf(checked: Checked<unknown>): readonly ToldProblem[] {
  if (checked.ok) expect.fail('this was read, and should have been refused');
  return told(checked.problems);
}

export const circuitOf = (text: string): Circuit => whole(readCircuit(text));

/** `3:8 bad-number`. */
export const oneLine = ({ line, column, code }: Pick<Problem, 'line' | 'column' | 'code'>): string =>
  `${line}:${column} ${code}`;
