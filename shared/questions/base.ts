/** What a question of every kind has. */
import { z } from 'zod';
import { circuit } from '../circuit.ts';
import { formName } from '../form-name.ts';
import { scenario } from '../scenario.ts';

export const questionBase = {
  circuit,
  /** Starting state, faults and acts; the question states all three in words. */
  scenario,
  /** Where the circuit comes from: a family's id, `free`, or `fixed` for one that an author wrote. */
  family: z.string().max(60),
  /** The seed that makes it again, where it was made. */
  seed: z.string().max(80).optional(),
};

/** How things stand, by what was asked. */
export const states = z.record(z.string(), z.string());

/** How many things one question may ask. */
export const MOST_ASKED = 24;

/** A controller input point, `-A1:I1`. */
export const inputPoint = z
  .string()
  .regex(/^-[A-Z]{1,3}[0-9]{1,4}:I[0-9]{1,2}$/, formName('form.inputPoint'));
