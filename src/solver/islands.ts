import type { Rows } from '../graph/index.ts';
import type { Volts } from './axes.ts';

/**
 * All islands side by side in flat arrays, so that evaluating one after another walks through memory in order. Island `i`
 * has the switches from `switchStart[i]` up to `switchStart[i + 1]`, and so on. Its points are its rails first, then the
 * cells of which the potential is found by evaluating.
 */
export interface Partition {
  readonly islands: number;
  readonly pointStart: Int32Array;
  /** The end of an island's rails among its points. */
  readonly railEnd: Int32Array;
  /** The rail on which one end of every load hangs, the other being no rail; -1 where that isn't so. */
  readonly common: Int32Array;
  /** What evaluating an island costs: its points and switches looked at, its loads twice. */
  readonly steps: Int32Array;
  readonly switchStart: Int32Array;
  /** Switches: global index, mechanism, closed mask, and the two points. */
  readonly switches: Int32Array;
  readonly mechanism: Int32Array;
  readonly closedMask: Uint8Array;
  readonly switchA: Int32Array;
  readonly switchB: Int32Array;
  readonly loadStart: Int32Array;
  /** Loads: global index, points, siemens. */
  readonly loads: Int32Array;
  readonly loadA: Int32Array;
  readonly loadB: Int32Array;
  readonly siemens: Float64Array;
  /** By island: the mechanisms that have a coil in it which may have a voltage. */
  readonly coilsIn: Rows;
  /** By mechanism: the islands its coils are in, where they may have a voltage. */
  readonly coilIslands: Rows;
  /** By mechanism: the islands in which it has contacts. */
  readonly contactIslands: Rows;
  /**
   * Two poles joined through feeding devices alone, two supplies joined, or an island between rails that share no
   * reference: the whole network must be solved.
   */
  readonly whole: boolean;
  /** Working memory of whoever evaluates: potentials of points (the rails' are set once), and what finds them. */
  readonly parent: Int32Array;
  readonly volts: Volts;
  /** Conductance that a point hangs on, and the currents through it from known points, along each axis. */
  readonly sum: Float64Array;
  readonly currents: Volts;
  /** Islands to be evaluated again. */
  readonly dirty: Uint8Array;
  readonly queue: Int32Array;
}
