/** What kinds of devices are put together from: their names, ratings, contacts and counts. */
import { z } from 'zod';
import { formName } from '../form-name.ts';

/** A reference designation after IEC 81346 with its leading minus: `-K3`. Supplies have a bare letter: `A`. */
export const designation = z.string().regex(/^-[A-Z]{1,3}[0-9]{1,4}$/, formName('form.designation'));

/** A terminal of one device: `11`, `A1`, `X2`, `L`, `L+`. */
export const terminalName = z.string().regex(/^[A-Z0-9]{1,4}[+-]?$/, formName('form.terminal'));

/** What a coil, lamp or other load is made for. `volts` is r.m.s. for AC. */
export const rating = z.strictObject({
  volts: z.number().positive().max(1000),
  current: z.enum(['AC', 'DC']),
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
export const contacts = z.array(contactSpec).min(1).max(12);

export const colour = z.enum(['red', 'yellow', 'amber', 'green', 'blue', 'white', 'grey', 'black']);
export const seconds = z.number().positive().max(86_400);
export const count = (most: number) => z.number().int().min(1).max(most);
export const watts = z.number().positive().max(100_000).optional();
export const amps = z.number().positive().max(1000).optional();

/** What every device has: its designation and the text beside it on the drawing ("Fan tripped"). */
export const base = { name: designation, text: z.string().max(80).optional() };

/** The texts beside the points of a controller's module. */
export const points = z.array(z.string().max(80)).max(16);
