/** What a family holds of a device on its board: the hops that lead through it, and the acts that move it. */
import type { Rating, Step } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';

/** A supply with its protective device. */
export interface Source {
  readonly name: string;
  readonly rating: Rating;
  /** From the supply's pole through the protective device. */
  readonly feed: readonly Step[];
  readonly return: Step;
  /** The protective device, to be opened and closed. */
  readonly protection: string;
}

/** One changeover: both legs start at the common. */
export interface Pole {
  readonly common: Step;
  readonly rest: Step;
  readonly made: Step;
}

/** Whatever has a coil and contacts. Each call takes a contact that is not used yet. */
export interface CoilPart {
  readonly name: string;
  /** What moves it: its coil, or the control input of what has a supply of its own. */
  readonly coil: Step;
  readonly supply?: Step;
  pole(): Pole;
  made(): Step;
  rest(): Step;
  /** Imagine it energised, and let it go again. */
  readonly held: Toggle;
}

export interface ContactorPart extends Omit<CoilPart, 'pole'> {
  readonly mains: readonly Step[];
}

export interface LatchingPart extends CoilPart {
  readonly reset: Step;
}

/** Two acts that undo each other. */
export interface Toggle {
  readonly on: Act;
  readonly off: Act;
  /** A button that somebody lets go of again. */
  readonly springs: boolean;
}

/** A button or a contact in the field. Each call adds a contact to the device. */
export interface ActuatedPart {
  readonly name: string;
  made(): Step;
  rest(): Step;
  pole(): Pole;
  readonly toggle: Toggle;
}

export interface LoadPart {
  readonly name: string;
  readonly hop: Step;
}

/** A controller's input module. */
export interface InputsPart {
  readonly source: Source;
  /** The next point, its text beside it. */
  next(text: string): Step;
  /** How many there are so far. */
  points(): number;
}
