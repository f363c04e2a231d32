import type { Device } from '../../../shared/circuit.ts';
import { type PartForm, symbolOf } from '../symbols/registry.ts';
import type { Actuator, Delay, Winding } from './moving.ts';

export type { Actuator, Delay, PartForm, Winding };

/** One terminal of a part, as it stands before the part is turned over. `dx` counts in leg spacings. */
export interface Spot {
  readonly terminal: string;
  readonly side: 'top' | 'bottom';
  readonly dx: number;
}

export const top = (terminal: string, dx = 0): Spot => ({ terminal, side: 'top', dx });
export const bottom = (terminal: string, dx = 0): Spot => ({ terminal, side: 'bottom', dx });

/** One thing that is drawn once, in one piece: a pole, a coil, a lamp, a controller point, a through terminal. */
export interface PartPlan {
  readonly form: PartForm;
  readonly spots: readonly Spot[];
  readonly actuator?: Actuator | undefined;
  readonly delay?: Delay | undefined;
  readonly winding?: Winding | undefined;
  /** Of a coil: its name in what is read off a circuit. */
  readonly coil?: string | undefined;
  /** The mechanism that moves it, by its id (`-K3`, `-A2:Q1`). */
  readonly mechanism?: string | undefined;
  /** For each drawn way through a contact: the mechanism's positions in which it is closed. */
  readonly ways: readonly Way[];
  /** A text of this part alone: a controller point's, a selector contact's positions. */
  readonly text?: string | undefined;
}

export interface Way {
  readonly from: string;
  readonly to: string;
  readonly closedIn: readonly number[];
}

export interface Part extends PartPlan {
  readonly index: number;
  /** `-K3:11`: the device and the part's first terminal. */
  readonly id: string;
  readonly device: Device;
  /** Parts with the same look are drawn by the same symbol. */
  readonly look: string;
  readonly traits: Traits;
}

/** What of a part, beside its form, decides how it is drawn and what moves it. */
export interface Traits {
  readonly actuator?: Actuator;
  readonly delay?: Delay;
  readonly winding?: Winding;
  readonly coil?: string;
  readonly mechanism?: string;
}

/** Parts that use the current: drawn in one row at the return side. */
export const isLoad = (form: PartForm): boolean => symbolOf(form).sort === 'load';

/** Poles that stand side by side in power paths. */
export const isPower = (form: PartForm): boolean => symbolOf(form).sort === 'pole';

/** Parts whose terminals stand side by side, one for each phase. */
export const isPolyphase = (form: PartForm): boolean => symbolOf(form).phases === true;

/** The mechanism of a pole that is drawn side by side with its fellows, joined by the dashed line; else undefined. */
export function poleMechanism(part: Part | undefined): string | undefined {
  if (!part) return undefined;
  if (isPower(part.form)) return part.mechanism;
  const contact = symbolOf(part.form).sort === 'contact';
  return contact && part.actuator && part.actuator !== 'trip' ? part.mechanism : undefined;
}
