/**
 * A control circuit as data: supplies, devices and current paths. This is the JSON form of the notation
 * (docs/notation.md) and what every part of the project passes around. No behaviour: what a device is made of
 * (its terminals, contacts and coils) is worked out from it by `src/circuit/anatomy`.
 */
import { z } from 'zod';
import {
  type colour,
  type contactSpec,
  count,
  designation,
  type rating,
  terminalName,
} from './devices/fields.ts';
import { device } from './devices/index.ts';
import { formName } from './form-name.ts';

export { colour, contactSpec, designation, rating, terminalName } from './devices/fields.ts';
export { type Device, type DeviceKind, type DeviceOf, device } from './devices/index.ts';

/** Supplies have a bare letter: `A`. */
export const supplyName = z.string().regex(/^[A-Z]$/, formName('form.supply'));

export const supplyCurrent = z.enum(['AC', 'DC', '3AC']);
/**
 * One isolated source. AC has terminals `L` and `N`, DC `L+` and `L-`, three-phase `L1 L2 L3 N`; `volts` is between
 * the two poles, for 3AC between two phases. `earthed`: N or L- is bonded to earth (PELV); two supplies
 * share a reference only when both are.
 */
export const supply = z.strictObject({
  name: supplyName,
  volts: z.number().positive().max(1000),
  current: supplyCurrent,
  earthed: z.boolean(),
  text: z.string().max(80).optional(),
});

/**
 * One stop on a path, in the order an electrician traces it. With `leave` it is a hop through the device from `enter`
 * to `leave`; without, the path only joins that terminal. Neighbours on a path are joined by a wire.
 */
export const step = z.strictObject({
  device: z.union([designation, supplyName]),
  enter: terminalName,
  leave: terminalName.optional(),
});

/** One current path: a line of the notation and a column of the drawing. */
export const path = z.strictObject({ sheet: count(99), steps: z.array(step).min(2).max(60) });

export const sheet = z.strictObject({ number: count(99), title: z.string().max(80).optional() });

export const circuit = z.strictObject({
  title: z.string().max(120).optional(),
  /** Drawn as it was found: words and colours are what was meant, the wiring is what is. */
  asFound: z.literal(true).optional(),
  supplies: z.array(supply).min(1).max(8),
  devices: z.array(device).max(2000),
  sheets: z.array(sheet).max(99),
  paths: z.array(path).max(4000),
});

export type Rating = Readonly<z.infer<typeof rating>>;
export type Supply = Readonly<z.infer<typeof supply>>;
export type ContactSpec = Readonly<z.infer<typeof contactSpec>>;
export type Colour = z.infer<typeof colour>;
export type Step = Readonly<z.infer<typeof step>>;
export type Path = Readonly<z.infer<typeof path>>;
export type Sheet = Readonly<z.infer<typeof sheet>>;
export type Circuit = Readonly<z.infer<typeof circuit>>;
/** A terminal written in full: `-K3:11`, `A:L+`. */
export type TerminalRef = `${string}:${string}`;
