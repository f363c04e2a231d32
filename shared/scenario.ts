/** What is done to a circuit, and what is wrong with it. The text form is in docs/notation.md. */
import { z } from 'zod';
import { designation, supplyName, terminalName } from './circuit.ts';
import { formName } from './form-name.ts';

/** A terminal in full, `-K3:11` or `A:L+`. */
export const terminalRef = z
  .string()
  .regex(/^(-[A-Z]{1,3}[0-9]{1,4}|[A-Z]):[A-Z0-9]{1,4}[+-]?$/, formName('form.terminalRef'));

const on = { device: designation };
/**
 * One act. Each is followed by settling; only `wait` lets timers run.
 * press, release: push-buttons and emergency stops. turn: selectors. make, break: the first contact of a
 * field contact, limit or float switch makes or breaks (so `break` actuates a break contact). open, close: isolators,
 * breakers and fuses. trip, reset: overloads. on, off: a controller output. hold, free: a relay held energised by
 * hand ("imagine -K3 energised") and let go again. fail, restore: a whole supply.
 */
export const act = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('press'), ...on }),
  z.strictObject({ kind: z.literal('release'), ...on }),
  z.strictObject({ kind: z.literal('turn'), ...on, to: z.string() }),
  z.strictObject({ kind: z.literal('make'), ...on }),
  z.strictObject({ kind: z.literal('break'), ...on }),
  z.strictObject({ kind: z.literal('open'), ...on }),
  z.strictObject({ kind: z.literal('close'), ...on }),
  z.strictObject({ kind: z.literal('trip'), ...on }),
  z.strictObject({ kind: z.literal('reset'), ...on }),
  z.strictObject({ kind: z.literal('on'), ...on, point: terminalName }),
  z.strictObject({ kind: z.literal('off'), ...on, point: terminalName }),
  z.strictObject({ kind: z.literal('hold'), ...on }),
  z.strictObject({ kind: z.literal('free'), ...on }),
  z.strictObject({ kind: z.literal('fail'), supply: supplyName }),
  z.strictObject({ kind: z.literal('restore'), supply: supplyName }),
  z.strictObject({ kind: z.literal('wait'), seconds: z.number().positive().max(86_400) }),
]);

/**
 * One fault, present from the start.
 * loose: the conductor is off at that terminal. cut: the wire between two neighbouring terminals of a path is broken.
 * welded: that contact (from-to) stays closed and its mechanism cannot get back to where it would open. dirty: a
 * closed contact has `ohms` of resistance. open, shorted: a coil or load is burnt through or short-circuited. blown: a
 * fuse or breaker is open. crossed: the conductors on two terminals are exchanged. stuck: the mechanism never
 * leaves its rest position.
 */
export const fault = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('loose'), at: terminalRef }),
  z.strictObject({ kind: z.literal('cut'), from: terminalRef, to: terminalRef }),
  z.strictObject({ kind: z.literal('welded'), from: terminalRef, to: terminalRef }),
  z.strictObject({
    kind: z.literal('dirty'),
    from: terminalRef,
    to: terminalRef,
    ohms: z.number().positive().max(1e9),
  }),
  z.strictObject({ kind: z.literal('open'), from: terminalRef, to: terminalRef }),
  z.strictObject({ kind: z.literal('shorted'), from: terminalRef, to: terminalRef }),
  z.strictObject({ kind: z.literal('blown'), ...on }),
  z.strictObject({ kind: z.literal('crossed'), one: terminalRef, other: terminalRef }),
  z.strictObject({ kind: z.literal('stuck'), ...on }),
]);

/**
 * `start`: `live` is the drawn state with isolators and breakers closed and the supplies on; `dead` has
 * every isolator and breaker open as drawn.
 */
export const scenario = z.strictObject({
  start: z.enum(['live', 'dead']),
  faults: z.array(fault).max(20),
  acts: z.array(act).max(200),
});

/**
 * What may go wrong in a scenario: a fault that is there from the start, a supply that fails or is switched off, a protective device that
 * trips. A recipe and a place of homework may ask that one of these happens.
 */
export const happening = z.enum(['fault', 'loss', 'trip']);
export const happens = z.array(happening).min(1).max(3);
export type Happening = z.infer<typeof happening>;

export type Act = Readonly<z.infer<typeof act>>;
export type Fault = Readonly<z.infer<typeof fault>>;
export type Scenario = Readonly<z.infer<typeof scenario>>;
