/** What a learner has set, and what a placement found: one value for each learner; of each field the newest one holds. */
import { z } from 'zod';
import { moment, skillId } from './memory.ts';

/** What the first questions found: skills that needn't be begun from the start. */
export const placement = z.strictObject({ at: moment, known: z.array(skillId).max(1000) });

/** When each field was changed, where that was noted; the whole was changed last otherwise. */
const changes = z.strictObject({
  assessmentAt: moment.optional(),
  minutesADay: moment.optional(),
  newSkillsADay: moment.optional(),
  placement: moment.optional(),
});

/** Every field has a value that means "not set", so that settings written before a field was added still read. */
export const settings = z.strictObject({
  /** When they were changed last, by the clock of the device. */
  changedAt: moment.default(0),
  changes: changes.optional(),
  assessmentAt: moment.nullable().default(null),
  minutesADay: z.number().int().min(1).max(600).nullable().default(null),
  /** How many skills may be begun in a day; null leaves it to the program. */
  newSkillsADay: z.number().int().min(0).max(50).nullable().default(null),
  placement: placement.nullable().default(null),
});

export type Placement = Readonly<z.infer<typeof placement>>;
export type Settings = Readonly<z.infer<typeof settings>>;
