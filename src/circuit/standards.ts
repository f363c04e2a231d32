/**
 * Limits and values from the standards, in one place. "From memory" marks a figure or clause that was not seen in
 * its source while this was written; tests/published holds the checks.
 */

/** Lamp, sounder, valve and motor states against rated voltage. Common practice, no source. */
export const LIT_FROM = 0.8;
export const DARK_BELOW = 0.1;

/** Coil limits as fractions of rated voltage. Between `release` and `operate` a coil stays as it is. */
export interface CoilLimits {
  readonly operate: number;
  readonly release: number;
}

/** IEC 61810-1: class 2 relays operate from 85 %; release by 5 % DC, 15 % AC (from memory). */
export const relayLimits = (current: 'AC' | 'DC'): CoilLimits => ({
  operate: 0.85,
  release: current === 'DC' ? 0.05 : 0.15,
});

/** IEC 60947-4-1: closes from 85 %; has certainly dropped out below 20 % AC, 10 % DC (from memory). */
export const contactorLimits = (current: 'AC' | 'DC'): CoilLimits => ({
  operate: 0.85,
  release: current === 'DC' ? 0.1 : 0.2,
});

export type InputType = '3.3V' | '24V-1' | '24V-2' | '24V-3';

export interface InputBands {
  /** Nominal voltage of a 1. */
  readonly volts: number;
  /** A reading up to this is 0. */
  readonly zeroUpTo: number;
  /** A reading from this is 1; between the two it is undefined. */
  readonly oneFrom: number;
  /** Input resistance in ohms, chosen so that the on-current lies in the standard's range. */
  readonly ohms: number;
}

/**
 * IEC 61131-2, 24 V DC inputs: 0 up to 5 V, 1 from 15 V (type 1) or 11 V (types 2, 3); on-currents 2 to 15 mA (types 1
 * and 3) and 6 to 30 mA (type 2; from memory). 3.3 V: the logic levels of JESD8C, 0.8 V and 2.0 V (from memory).
 */
export const INPUT_BANDS: Readonly<Record<InputType, InputBands>> = {
  '3.3V': { volts: 3.3, zeroUpTo: 0.8, oneFrom: 2, ohms: 10_000 },
  '24V-1': { volts: 24, zeroUpTo: 5, oneFrom: 15, ohms: 4_700 },
  '24V-2': { volts: 24, zeroUpTo: 5, oneFrom: 11, ohms: 1_600 },
  '24V-3': { volts: 24, zeroUpTo: 5, oneFrom: 11, ohms: 4_700 },
};

/** Rated power in watts where a device states none. Typical of data sheets, from memory. */
export const TYPICAL_WATTS = {
  relay: 1,
  contactor: 4,
  timer: 1,
  lamp: 2,
  sounder: 3,
  valve: 8,
  motor: 750,
} as const;

/** Milliseconds to begin moving after the coil gains or loses its voltage, and to travel between the contacts. */
export interface Speeds {
  readonly operateMs: number;
  readonly releaseMs: number;
  readonly travelMs: number;
}

/** From data sheets: small relay 5 and 3 ms; contactor closes in 20 to 35 ms, opens in 6 to 30 ms, 1.5 ms without overlap. */
export const SPEEDS = {
  relay: { operateMs: 5, releaseMs: 3, travelMs: 1 },
  contactor: { operateMs: 25, releaseMs: 15, travelMs: 1.5 },
  timer: { operateMs: 10, releaseMs: 8, travelMs: 1 },
  hand: { operateMs: 0, releaseMs: 0, travelMs: 2 },
} as const satisfies Record<string, Speeds>;
