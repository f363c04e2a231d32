import type { Device, Sheet, Step, Supply } from '../../../shared/circuit.ts';
import type { CircuitProblemSaid } from '../../words/index.ts';
import { codeOf } from '../../words/problems.ts';
import type { Concern, Finding } from '../findings.ts';

export type Unsound = Finding<CircuitProblemSaid>;

export const unsoundAt = (said: CircuitProblemSaid, concern: Concern): Unsound => ({
  code: codeOf(said.says),
  said,
  concern,
});

/** A circuit as far as it could be read: steps that could not are left out. */
export interface PartialCircuit {
  readonly title?: string | undefined;
  readonly supplies: readonly Supply[];
  readonly devices: readonly Device[];
  readonly sheets: readonly Sheet[];
  readonly paths: readonly { readonly sheet: number; readonly steps: readonly (Step | undefined)[] }[];
}
