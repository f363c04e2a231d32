/** What the solver says of a circuit and a scenario: the shape of `polewise solve --json` (docs/solution.md). */
import { z } from 'zod';
import { terminalName } from './circuit.ts';

/** lit from 80 % of the rated voltage, dark below 10 %, dim between (common practice, no source); flashing: never rests. */
export const lampState = z.enum(['lit', 'dim', 'dark', 'flashing']);
/** The bands of IEC 61131-2 (3.3 V: JESD8C): 0, 1, or undefined between them. */
export const inputState = z.enum(['0', '1', 'undefined', 'changing']);
/** A coil's voltage against its operate and release limits. */
export const coilBand = z.enum(['operates', 'between', 'releases']);

export const coilReading = z.strictObject({
  /** The mechanism is in its operated position (for a timer: its contacts have changed over). */
  operated: z.boolean(),
  /** The coil has the voltage to operate. A timer that is still timing is energised and not operated. */
  energised: z.boolean(),
  band: coilBand,
  volts: z.number(),
});

/** One stop on a traced path; `leave` absent: only the terminal. */
export const traceHop = z.strictObject({
  device: z.string(),
  enter: terminalName,
  leave: terminalName.optional(),
});

/** An open contact (or an open place made by a fault) that stops the current, and what keeps it open. */
export const blocker = z.strictObject({
  device: z.string(),
  enter: terminalName,
  leave: terminalName,
  /** `rest`: at rest and a make; `moved`: away from rest and a break; `travelling`; `fault`: never closes as things are. */
  because: z.enum(['rest', 'moved', 'travelling', 'fault']),
});

/**
 * Why one load is in its state. `fed` true: `path` goes from one pole of the supply, through the load, to the
 * other, closed all the way. `fed` false: `stoppedBy` is a smallest set of open contacts such that no current can
 * flow while they are open (empty: nothing joins the load to a supply even with every contact closed).
 */
export const loadTrace = z.strictObject({
  load: z.string(),
  fed: z.boolean(),
  path: z.array(traceHop),
  stoppedBy: z.array(blocker),
});

/** What a short circuit has put out besides: protective devices that opened, and supplies that nothing protects. */
const out = z.strictObject({ devices: z.array(z.string()), supplies: z.array(z.string()) }).optional();

export const outcome = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('steady') }),
  /** No steady state: these mechanisms never rest (a flasher, or a relay that breaks its own coil). */
  z.strictObject({ kind: z.literal('keeps-switching'), devices: z.array(z.string()), out }),
  /** The result depends on which of these is faster. `ways`: how many it can end in, never resting counted as one. */
  z.strictObject({ kind: z.literal('race'), devices: z.array(z.string()), ways: z.number().int(), out }),
  /** Not decided within the limits: more orders of operation, or more events, than could be tried. These were on the move. */
  z.strictObject({ kind: z.literal('undecided'), devices: z.array(z.string()), out }),
  /** A short circuit: these protective devices opened (none: nothing protects that supply). */
  z.strictObject({
    kind: z.literal('protection-tripped'),
    devices: z.array(z.string()),
    supplies: z.array(z.string()),
  }),
]);

/** One thing that happened, at `ms` since the start of the scenario. `act`: index of the act it belongs to, -1 the start. */
export const happening = z.strictObject({
  ms: z.number(),
  act: z.number().int(),
  what: z.enum(['act', 'energised', 'de-energised', 'leaves', 'arrives', 'lamp', 'load', 'input', 'trips']),
  /** Designation (`-K3`), input point (`-A1:I1`), or empty for an act. */
  device: z.string(),
  /** The new state or position in words: `operated`, `rest`, `lit`, `1`, or the act's text. */
  to: z.string(),
});

export const solution = z.strictObject({
  outcome,
  /** By designation; a latching relay has `-K7` (set) and `-K7:B1` (reset). */
  coils: z.record(z.string(), coilReading),
  lamps: z.record(z.string(), lampState),
  /** Sounders, valves and motors, on the same limits as lamps (lit = on, dim = weak, dark = off). */
  loads: z.record(z.string(), lampState),
  /** By point: `-A1:I1`. */
  inputs: z.record(z.string(), inputState),
  /** Volts across each coil, lamp, load and input, by `-K3:A1-A2`. */
  volts: z.record(z.string(), z.number()),
  steps: z.array(happening),
  trace: z.array(loadTrace),
});

export type LampState = z.infer<typeof lampState>;
export type InputState = z.infer<typeof inputState>;
export type CoilReading = Readonly<z.infer<typeof coilReading>>;
export type TraceHop = Readonly<z.infer<typeof traceHop>>;
export type Blocker = Readonly<z.infer<typeof blocker>>;
export type LoadTrace = Readonly<z.infer<typeof loadTrace>>;
export type Outcome = Readonly<z.infer<typeof outcome>>;
export type Happening = Readonly<z.infer<typeof happening>>;
export type Solution = Readonly<z.infer<typeof solution>>;
