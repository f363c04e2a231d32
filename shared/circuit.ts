/**
 * A control circuit as data: supplies, devices and current paths. This is the JSON form of the notation
 * (docs/notation.md) and what every part of the project passes around. No behaviour: what a device is made of
 * (its terminals, contacts and coils) is worked out from it by `src/circuit/anatomy`.
 */
import { z } from 'zod';
import { formName } from './form-name.ts';

/** A reference designation after IEC 81346 with its leading minus: `-K3`. Supplies have a bare letter: `A`. */
export const designation = z.string().regex(/^-[A-Z]{1,3}[0-9]{1,4}$/, formName('form.designation'));
export const supplyName = z.string().regex(/^[A-Z]$/, formName('form.supply'));

/** A terminal of one device: `11`, `A1`, `X2`, `L`, `L+`. */
export const terminalName = z.string().regex(/^[A-Z0-9]{1,4}[+-]?$/, formName('form.terminal'));

export const supplyCurrent = z.enum(['AC', 'DC', '3AC']);
/** What a coil, lamp or other load is made for. `volts` is r.m.s. for AC. */
export const rating = z.strictObject({
  volts: z.number().positive().max(1000),
  current: z.enum(['AC', 'DC']),
});

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
 * One contact of a device: make `[13, 14]`, break `[21, 22]`, changeover `[common, break leg, make leg]`.
 * `positions` (selectors only): the positions in which a make is closed, or a break is open.
 */
export const contactSpec = z.strictObject({
  form: z.enum(['make', 'break', 'changeover']),
  terminals: z.array(terminalName).min(2).max(3),
  positions: z.array(z.string()).min(1).optional(),
});
const contacts = z.array(contactSpec).min(1).max(12);

export const colour = z.enum(['red', 'yellow', 'amber', 'green', 'blue', 'white', 'grey', 'black']);
const seconds = z.number().positive().max(86_400);
const count = (most: number) => z.number().int().min(1).max(most);
const watts = z.number().positive().max(100_000).optional();

/** What every device has: its designation and the text beside it on the drawing ("Fan tripped"). */
const base = { name: designation, text: z.string().max(80).optional() };

export const device = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('relay'), ...base, poles: count(4), rating }),
  z.strictObject({
    kind: z.literal('contactor'),
    ...base,
    mains: z.number().int().min(0).max(4),
    contacts: z.array(contactSpec).max(12),
    rating,
  }),
  z.strictObject({ kind: z.literal('on-delay'), ...base, seconds, poles: count(2), rating }),
  z.strictObject({ kind: z.literal('off-delay'), ...base, seconds, poles: count(2), rating }),
  /** Starts with its contacts made for `on` seconds, then at rest for `off` seconds, for as long as it is energised. */
  z.strictObject({ kind: z.literal('flasher'), ...base, on: seconds, off: seconds, poles: count(2), rating }),
  /** Set coil A1-A2, reset coil B1-B2; keeps its position without supply. */
  z.strictObject({ kind: z.literal('latching-relay'), ...base, poles: count(4), rating }),
  z.strictObject({ kind: z.literal('push-button'), ...base, contacts, colour: colour.optional() }),
  /** Stays pressed until it is released (pulled or turned back). */
  z.strictObject({ kind: z.literal('emergency-stop'), ...base, contacts }),
  /** The first position is the drawn one. */
  z.strictObject({
    kind: z.literal('selector'),
    ...base,
    positions: z
      .array(z.string().regex(/^[A-Za-z0-9]{1,12}$/))
      .min(2)
      .max(6),
    contacts,
  }),
  z.strictObject({ kind: z.literal('field-contact'), ...base, contacts }),
  z.strictObject({ kind: z.literal('limit-switch'), ...base, contacts }),
  z.strictObject({ kind: z.literal('float-switch'), ...base, contacts }),
  /** Main poles 1-2 3-4 5-6, auxiliary break 95-96 and make 97-98. */
  z.strictObject({ kind: z.literal('overload'), ...base }),
  z.strictObject({
    kind: z.literal('fuse'),
    ...base,
    poles: count(3),
    amps: z.number().positive().max(1000).optional(),
  }),
  z.strictObject({
    kind: z.literal('breaker'),
    ...base,
    poles: count(3),
    amps: z.number().positive().max(1000).optional(),
  }),
  z.strictObject({ kind: z.literal('isolator'), ...base, poles: count(4) }),
  z.strictObject({ kind: z.literal('lamp'), ...base, colour: colour.optional(), watts, rating }),
  z.strictObject({ kind: z.literal('sounder'), ...base, watts, rating }),
  z.strictObject({ kind: z.literal('valve'), ...base, watts, rating }),
  /** Three-phase motor, `volts` the rating of one winding: 3 terminals (U1 V1 W1, joined in star inside) or 6. */
  z.strictObject({
    kind: z.literal('motor'),
    ...base,
    terminals: z.union([z.literal(3), z.literal(6)]),
    volts: z.number().positive().max(1000),
  }),
  /** Controller inputs I1… against COM. `points` are the texts beside each input. */
  z.strictObject({
    kind: z.literal('inputs'),
    ...base,
    count: count(16),
    type: z.enum(['3.3V', '24V-1', '24V-2', '24V-3']),
    points: z.array(z.string().max(80)).max(16),
  }),
  /** Controller outputs Q1…, each a contact from the common terminal COM that the program closes. */
  z.strictObject({
    kind: z.literal('outputs'),
    ...base,
    count: count(16),
    points: z.array(z.string().max(80)).max(16),
  }),
  /** A row of through terminals 1…count. */
  z.strictObject({ kind: z.literal('terminals'), ...base, count: count(60) }),
]);

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
  supplies: z.array(supply).min(1).max(8),
  devices: z.array(device).max(2000),
  sheets: z.array(sheet).max(99),
  paths: z.array(path).max(4000),
});

export type Rating = Readonly<z.infer<typeof rating>>;
export type Supply = Readonly<z.infer<typeof supply>>;
export type ContactSpec = Readonly<z.infer<typeof contactSpec>>;
export type Colour = z.infer<typeof colour>;
export type Device = Readonly<z.infer<typeof device>>;
export type DeviceKind = Device['kind'];
export type DeviceOf<K extends DeviceKind> = Extract<Device, { kind: K }>;
export type Step = Readonly<z.infer<typeof step>>;
export type Path = Readonly<z.infer<typeof path>>;
export type Sheet = Readonly<z.infer<typeof sheet>>;
export type Circuit = Readonly<z.infer<typeof circuit>>;
/** A terminal written in full: `-K3:11`, `A:L+`. */
export type TerminalRef = `${string}:${string}`;
