/**
 * What is kept of a learner's memory: the skills there are, the answers given, and the recall state that follows from
 * them. How a state follows from an answer is `src/memory`; docs/memory.md says it in words.
 */
import { z } from 'zod';
import { formName } from './form-name.ts';

/** A skill's name in banks, answers and web addresses: `changeover-two-poles`. */
export const skillId = z
  .string()
  .max(64)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, formName('form.skill'));

/** Something a learner can do or not. It opens when everything in `needs` is shown and not forgotten. */
export const skill = z.strictObject({
  id: skillId,
  title: z.string().min(1).max(120),
  needs: z.array(skillId).max(20),
});
export const skillList = z.array(skill).max(1000);

/** Milliseconds since 1970-01-01 UTC. */
export const moment = z.number().int().min(0).max(8_640_000_000_000_000);

/** Which circuit an answer was about: the same text for the same circuit however its devices are named. */
export const circuitId = z.string().min(1).max(120);

/** What one answer says about the memory, from nothing left (1) to fluent (4). The rule is in docs/memory.md. */
export const grade = z.enum(['lost', 'shaky', 'firm', 'sure']);

/** What was looked at before answering. */
export const help = z.strictObject({ hint: z.boolean(), explanation: z.boolean() });

/** What was asked in one question, and how it was answered, in numbers. */
export const partsCounted = z.strictObject({
  asked: z.number().int().min(0).max(10_000),
  right: z.number().int().min(0).max(10_000),
  /** The greatest chance of somebody who guesses to get all of it right. */
  luck: z.number().positive().max(1),
});

/** How one question was answered; all that the grade follows from. */
export const attempt = z.strictObject({
  /** Share of the part marks, 0 to 1. */
  share: z.number().min(0).max(1),
  /** Attempts of the first versions don't say it. */
  parts: partsCounted.optional(),
  help,
  /** From seeing the question to answering it; null where nobody measured (a paper). */
  secondsUsed: z.number().min(0).nullable(),
  /** What a question of this kind and size takes, reading included. */
  secondsExpected: z.number().positive(),
});

/** One line of a learner's history. Histories only grow; a line with an `id` that is already there counts once. */
export const skillAnswer = z.strictObject({
  id: z.string().min(1).max(64),
  skill: skillId,
  circuit: circuitId,
  at: moment,
  attempt,
});

/** The memory of one learner for one skill. */
export const recall = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('new') }),
  z.strictObject({
    kind: z.literal('begun'),
    /** Days until the chance of a right answer has fallen to 90 %. */
    stability: z.number().min(0.001).max(36_500),
    /** 1 (easy to keep) to 10. */
    difficulty: z.number().min(1).max(10),
    firstAt: moment,
    lastAt: moment,
    reviews: z.number().int().min(1),
    /** How often it was lost after it had been begun. */
    lapses: z.number().int().min(0),
    /** How many of its last answers in a row were lost. */
    lostLately: z.number().int().min(0),
    /** The shares of the marks that the answers earned, the later ones weighing more. */
    earned: z.number().min(0).max(20),
    /** How many times as likely the answers are from somebody who can do it as from somebody who guesses. */
    evidence: z.number().min(0).max(2000),
    /** Circuits answered last, the latest last: one of them once more is no evidence. */
    circuits: z.array(circuitId).max(20),
  }),
]);

/** What a learner wants of a plan towards an assessment. */
export const planWishes = z.strictObject({
  assessmentAt: moment,
  minutesADay: z.number().min(0).max(600),
  secondsPerQuestion: z.number().min(1).max(3600),
});

export type Skill = Readonly<z.infer<typeof skill>>;
export type Grade = z.infer<typeof grade>;
export type Help = Readonly<z.infer<typeof help>>;
export type PartsCounted = Readonly<z.infer<typeof partsCounted>>;
export type Attempt = Readonly<z.infer<typeof attempt>>;
export type SkillAnswer = Readonly<z.infer<typeof skillAnswer>>;
export type Recall = Readonly<z.infer<typeof recall>>;
export type BegunRecall = Extract<Recall, { kind: 'begun' }>;
export type PlanWishes = Readonly<z.infer<typeof planWishes>>;
