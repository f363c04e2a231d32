/**
 * A circuit taken apart into what the solver computes with: conductors as numbered nodes, switches, resistive loads,
 * sources and mechanisms, with the faults already in it. A plan is plain data, so a misconception is a function from
 * plan to plan; `machine.ts` compiles one into typed arrays.
 */

import type { Supply } from '../../shared/circuit.ts';
import type { Drive, LoadRole } from '../circuit/anatomy/index.ts';
import type { CoilLimits, InputBands, Speeds } from '../circuit/standards.ts';

export interface PlanMechanism {
  /** `-K3`, or `-A2:Q1` for a controller output. */
  readonly id: string;
  readonly device: string;
  readonly drive: Drive;
  readonly positions: readonly string[];
  readonly live: number;
  readonly speeds: Speeds;
  /** Seconds; see `Mechanism.delays`. */
  readonly delays: readonly number[];
  readonly protects: boolean;
  readonly amps?: number;
  /** Never leaves this position (a stuck mechanism, or a misconception that leaves it as drawn). */
  readonly frozenAt?: number;
  /** A timer that goes on after an interruption from where it stood (only misconceptions do). */
  readonly addsUp?: boolean;
}

export interface PlanSwitch {
  readonly device: string;
  readonly from: string;
  readonly to: string;
  readonly a: number;
  readonly b: number;
  /** Index of its mechanism; -1 for an open place made by a fault. */
  readonly mechanism: number;
  readonly closedIn: readonly number[];
  readonly form: 'make' | 'break';
  readonly pole: number;
  readonly changeover: boolean;
  readonly main: boolean;
  /** Overrides `closedIn`: welded or worn away. */
  readonly fixed?: 'closed' | 'open';
}

export interface PlanLoad {
  /** `-K3`, `-H1`, `-A1:I1`; the reset coil of a latching relay is `-K7:B1`, a motor winding `-M1:U1`. */
  readonly id: string;
  readonly device: string;
  readonly from: string;
  readonly to: string;
  readonly a: number;
  readonly b: number;
  /** `dirt` is the resistance of a dirty contact. */
  readonly role: LoadRole | 'dirt';
  /** Siemens; 0 when burnt open. */
  readonly siemens: number;
  readonly volts: number;
  readonly mechanism: number;
  readonly limits?: CoilLimits;
  readonly bands?: InputBands;
  /** Burnt open: it has its voltage and does nothing. */
  readonly dead: boolean;
  /** A controller that reads its input inverted (only misconceptions do). */
  readonly inverted?: boolean;
}

export interface PlanPole {
  readonly terminal: string;
  readonly node: number;
  /** Volts against the supply's return: the direct part, or the r.m.s. phasor of an alternating one; see axes.ts. */
  readonly direct: number;
  readonly re: number;
  readonly im: number;
}

export interface PlanSupply {
  readonly name: string;
  readonly supply: Supply;
  /** The return last. */
  readonly poles: readonly PlanPole[];
  readonly earthed: boolean;
}

export interface Plan {
  readonly nodes: number;
  /** Node of each terminal, `-K3:11`. */
  readonly nodeOf: ReadonlyMap<string, number>;
  /** Pairs of nodes joined for good, beyond the conductors (a short-circuited load). */
  readonly joins: readonly (readonly [number, number])[];
  readonly supplies: readonly PlanSupply[];
  readonly switches: readonly PlanSwitch[];
  readonly loads: readonly PlanLoad[];
  readonly mechanisms: readonly PlanMechanism[];
}
