import type { Volts } from './axes.ts';

/** A whole network, solved. */
export interface Network {
  /** Potential of each node along each axis; comparable only between nodes of the same reference. */
  readonly volts: Volts;
  /** Nodes with the same number share a reference, so a meter between them reads something definite. */
  readonly reference: Int32Array;
  /** Groups of supplies whose poles are joined without resistance so that their voltages contradict each other. */
  readonly shorted: readonly (readonly number[])[];
}

/** Voltages of every load, worked out for one standing of all contacts. */
export interface Evaluated {
  readonly volts: Volts;
  readonly shorted: Network['shorted'];
}
