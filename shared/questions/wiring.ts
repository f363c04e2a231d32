import { z } from 'zod';
import { scenario, terminalRef } from '../scenario.ts';
import { inputState, lampState } from '../solution.ts';
import { questionBase } from './base.ts';

const kind = z.literal('wiring');

/**
 * Which leg or terminals have to be wired so that the circuit behaves as stated? `circuit` is drawn without that
 * conductor pair; each choice is a pair of wires put in its place; `wanted` tells lamps and inputs after each of some scenarios.
 */
export const wiringQuestion = z.strictObject({
  kind,
  ...questionBase,
  /** Where the two loose ends are: the conductor that comes to the contact, and the one that leaves it. */
  ends: z.tuple([terminalRef, terminalRef]),
  choices: z
    .array(z.tuple([terminalRef, terminalRef]))
    .min(2)
    .max(8),
  /** What is wanted: the states of one load, by scenario. Exactly one choice does it. */
  wanted: z
    .array(
      z.strictObject({
        acts: scenario.shape.acts,
        load: z.string(),
        state: z.union([lampState, inputState]),
      }),
    )
    .min(1)
    .max(6),
});
/** Index of the choice; left out when nothing was answered. */
export const wiringAnswer = z.strictObject({ kind, choice: z.number().int().min(0).max(7).optional() });
