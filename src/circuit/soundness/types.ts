import type { Device, Sheet, Step, Supply } from '../../../shared/circuit.ts';
import type { Finding } from '../findings.ts';
import type { CircuitCode } from '../problem-codes.ts';

export type Unsound = Finding<CircuitCode>;
export type Wrong = Omit<Unsound, 'concern'>;

/** A circuit as far as it could be read: steps that could not are left out. */
export interface PartialCircuit {
  readonly title?: string | undefined;
  readonly supplies: readonly Supply[];
  readonly devices: readonly Device[];
  readonly sheets: readonly Sheet[];
  readonly paths: readonly { readonly sheet: number; readonly steps: readonly (Step | undefined)[] }[];
}
