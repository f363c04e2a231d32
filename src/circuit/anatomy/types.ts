import type { Colour } from '../../../shared/circuit.ts';
import type { CoilLimits, InputBands, Speeds } from '../standards.ts';

/** How a mechanism is moved. */
export type Drive =
  /** By a coil, at once. */
  | 'coil'
  /** By a set and a reset coil; stays where it is without either. */
  | 'latch'
  | 'on-delay'
  | 'off-delay'
  /** As an off-delay by its control input, as long as it is supplied; without its supply at rest. */
  | 'supplied-off-delay'
  | 'flasher'
  /** By an act only: buttons, selectors, field contacts, overload trips, controller outputs. */
  | 'act'
  /** By an act, or by itself on a short circuit: fuses and breakers. Isolators too, by acts only. */
  | 'feed';

/** The part of a device that moves its contacts together. */
export interface Mechanism {
  /** `-K3`; an output module has one for each point, `-A2:Q1`. */
  readonly id: string;
  readonly drive: Drive;
  /** Position 0 is the drawn one. Two-position mechanisms are `rest` and `operated` or the device's own words. */
  readonly positions: readonly string[];
  /** Where it stands when a scenario starts live. */
  readonly live: number;
  readonly speeds: Speeds;
  /** Seconds until a timer operates (on-delay), releases (off-delay), or changes (flasher: on, off). */
  readonly delays: readonly number[];
  /** Opens by itself on a short circuit. `amps`: its rating, where it states one. */
  readonly protects: boolean;
  readonly amps?: number;
  /** Its contacts are mechanically linked (mirror contacts): a weld in one make keeps every break open. */
  readonly linked?: boolean;
  /** Outputs: the text beside the point. */
  readonly text?: string;
}

export interface Contact {
  readonly from: string;
  readonly to: string;
  /** Index into the anatomy's mechanisms. */
  readonly mechanism: number;
  /** Positions in which it is closed. On the way from one position to another it is closed only if it is in both. */
  readonly closedIn: readonly number[];
  readonly form: 'make' | 'break';
  /** Contacts of one pole share a number; a changeover's two legs are one pole with one common. */
  readonly pole: number;
  /** Part of a changeover. */
  readonly changeover: boolean;
  readonly main: boolean;
}

export type LoadRole =
  | 'coil'
  | 'set'
  | 'reset'
  /** A timer's control input, and its own supply. */
  | 'control'
  | 'supply'
  | 'lamp'
  | 'sounder'
  | 'valve'
  | 'motor'
  | 'input';

/** A resistive part between two terminals: what a current path is for. */
export interface Load {
  readonly from: string;
  readonly to: string;
  readonly role: LoadRole;
  readonly ohms: number;
  /** Rated voltage, and the kind of current where it matters. */
  readonly volts: number;
  readonly current?: 'AC' | 'DC';
  /** Coils: the mechanism it moves and its limits. */
  readonly mechanism?: number;
  readonly limits?: CoilLimits;
  /** Inputs: the point (`I1`), and its bands. */
  readonly point?: string;
  readonly bands?: InputBands;
  /** Inputs: the text beside the point. */
  readonly text?: string;
}

/** What a device is made of. */
export interface Anatomy {
  /** In the order of the drawing. A motor's inner star point is a terminal that no path can reach: `*`. */
  readonly terminals: readonly string[];
  readonly mechanisms: readonly Mechanism[];
  readonly contacts: readonly Contact[];
  readonly loads: readonly Load[];
  readonly colour?: Colour;
  /** Controllers: the terminal that its points share. */
  readonly common?: string;
}
