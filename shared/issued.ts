/** Questions that the server issues to a learner ahead, and what an answer to one of them proves. docs/homework.md says how. */
import { z } from 'zod';
import { formName } from './form-name.ts';
import { moment, skillId } from './memory.ts';

/** Where a proof comes from: practice that was issued, homework, or homework sat under supervision. */
export const proofSource = z.enum(['issued', 'homework', 'supervised']);

/** What a tutor asks for: every proof, or only those that somebody watched. */
export const proofsWanted = z.enum(['any', 'supervised']);

export const issuedId = z.string().regex(/^[A-Za-z0-9]{21}$/, formName('form.issuedId'));

/** A question that is still to be made: with the skill's recipes everything on it follows from this. */
export const issuedQuestion = z.strictObject({
  /** Also what all its choices follow from. */
  id: issuedId,
  skill: skillId,
  /** How far the circuits of the skill have grown for the learner. */
  reviews: z.number().int().min(0).max(1000),
  issuedAt: moment,
  /** From this moment on an answer to it proves nothing. */
  until: moment,
});

/** How many questions of one skill are issued ahead. */
export const ISSUED_AHEAD = 8;

/** How many questions a device still has, by skill. */
export const supplyWish = z.strictObject({ have: z.record(skillId, z.number().int().min(0).max(1000)) });
export const supply = z.strictObject({ issued: z.array(issuedQuestion) });

export type ProofSource = z.infer<typeof proofSource>;
export type ProofsWanted = z.infer<typeof proofsWanted>;
export type IssuedQuestion = Readonly<z.infer<typeof issuedQuestion>>;
