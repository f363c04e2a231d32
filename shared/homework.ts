/**
 * Homework: the set a tutor issues, one learner's own paper of it, what was saved, and the mark. How papers are made and
 * marked is `src/homework`; docs/homework.md says it in words.
 */
import { z } from 'zod';
import { formName } from './form-name.ts';
import { circuitId, moment, skillId } from './memory.ts';
import { learnerId } from './practice.ts';
import { answer, mark, publicQuestion, question, questionKind, toldMark } from './question.ts';
import { happens } from './scenario.ts';

/** The name of a homework set; made where it is stored. */
export const homeworkId = z
  .string()
  .max(64)
  .regex(/^[A-Za-z0-9_-]+$/, formName('form.id'));

/**
 * One place on every paper of a set. All learners get the same skill, kind and size in it, from the same families, and
 * as good as the same difficulty; the circuits differ.
 */
export const homeworkPlace = z.strictObject({
  skill: skillId,
  kind: questionKind,
  families: z.array(z.string().min(1).max(60)).min(1).max(40),
  /** On the families' own scale. */
  size: z.number().int().min(1).max(8),
  /** One of these happens in every question; anything may where it is left out. */
  happens: happens.optional(),
  /** What questions in this place are held to; the tolerance is in docs/homework.md. */
  difficulty: z.number().min(0).max(100),
  marks: z.number().int().min(1).max(100),
});

/** `hints`: the first thing to look at may be asked for. What explains the answer never comes before it is given. */
export const helpAllowed = z.enum(['none', 'hints']);

/** When a learner may look through the marked paper: as soon as it is submitted, after closing, or only with the tutor. */
export const reviewAllowed = z.enum(['after-submitting', 'after-closing', 'never']);

export const homeworkSet = z.strictObject({
  id: homeworkId,
  title: z.string().min(1).max(120),
  places: z.array(homeworkPlace).min(1).max(100),
  opensAt: moment,
  closesAt: moment,
  attempts: z.number().int().min(1).max(10),
  /** Which attempt counts where there are several: the one with most marks, or the last one begun. */
  counts: z.enum(['best', 'last']),
  help: helpAllowed,
  review: reviewAllowed,
  /** It was sat while somebody watched; by the word of its tutor. */
  supervised: z.boolean().optional(),
});

/** Whose paper, and the text that all its choices follow from: a keyed hash of set, learner and attempt, made outside. */
export const seat = z.strictObject({
  learner: learnerId,
  /** From 1. */
  attempt: z.number().int().min(1).max(10),
  seed: z.string().min(1).max(64),
});

export const paperItem = z.strictObject({
  skill: skillId,
  question,
  /** The same text for the same circuit however its devices are named. */
  circuit: circuitId,
  difficulty: z.number(),
  secondsExpected: z.number().positive(),
  marks: z.number().int().min(1),
  /** Which of the learner's own candidates it is, from 0: with it and the seed the same question comes again. */
  draw: z.number().int().min(0),
});

/** One learner's own version of a set, kept whole: this is what is marked, whatever later versions would make. */
export const paper = z.strictObject({
  set: homeworkId,
  learner: learnerId,
  attempt: z.number().int().min(1),
  /** In the order of the set's places. */
  items: z.array(paperItem).min(1),
});

/** What may be sent to the learner before submission: nothing in it tells how the questions were made. */
export const publicPaper = z.strictObject({
  set: homeworkId,
  title: z.string(),
  attempt: z.number().int().min(1),
  opensAt: moment,
  closesAt: moment,
  help: helpAllowed,
  items: z.array(z.strictObject({ marks: z.number().int(), question: publicQuestion })),
});

/** One answer saved on the way. The last one of an item that came before closing counts. */
export const savedAnswer = z.strictObject({
  /** Index in the paper's items. */
  item: z.number().int().min(0).max(99),
  answer,
  /** When it arrived, by the clock of the server. */
  at: moment,
  /** Time spent on the item so far; null where nobody measured. */
  secondsUsed: z.number().min(0).nullable(),
  /** Whether the hint was looked at. */
  hint: z.boolean(),
});

/** A tutor's own mark for an item, with the reason. It stands beside the first mark and never replaces it. */
export const override = z.strictObject({
  earned: z.number().min(0),
  reason: z.string().trim().min(1).max(1000),
  by: learnerId,
  at: moment,
});

/** Where else than on its paper the circuit of an item was to be marked or run: in the page's words. */
export const triedPlace = z.enum(['practice', 'try-it', 'write']);

/** That it was tried, while the paper could still be worked on. It was neither marked nor run. */
export const triedElsewhere = z.strictObject({
  /** Index in the paper's items. */
  item: z.number().int().min(0),
  place: triedPlace,
  firstAt: moment,
  lastAt: moment,
  times: z.number().int().min(1),
});

export const itemMark = z.strictObject({
  skill: skillId,
  circuit: circuitId,
  marks: z.number().int().min(1),
  /** `part`: something that was asked is left out. */
  answered: z.enum(['all', 'part', 'none']),
  hint: z.boolean(),
  secondsUsed: z.number().min(0).nullable(),
  /** As it followed from the answer. */
  mark,
  /** The latest one holds. */
  overrides: z.array(override),
});

export const paperMark = z.strictObject({
  set: homeworkId,
  learner: learnerId,
  attempt: z.number().int().min(1),
  items: z.array(itemMark).min(1),
});

/** The same in words, with the explanations. */
export const toldPaperMark = z.strictObject({
  ...paperMark.shape,
  items: z.array(z.strictObject({ ...itemMark.shape, mark: toldMark })).min(1),
});

export type HomeworkPlace = Readonly<z.infer<typeof homeworkPlace>>;
export type HomeworkSet = Readonly<z.infer<typeof homeworkSet>>;
export type Seat = Readonly<z.infer<typeof seat>>;
export type PaperItem = Readonly<z.infer<typeof paperItem>>;
export type Paper = Readonly<z.infer<typeof paper>>;
export type PublicPaper = Readonly<z.infer<typeof publicPaper>>;
export type SavedAnswer = Readonly<z.infer<typeof savedAnswer>>;
export type Override = Readonly<z.infer<typeof override>>;
export type TriedPlace = z.infer<typeof triedPlace>;
export type TriedElsewhere = Readonly<z.infer<typeof triedElsewhere>>;
export type ItemMark = Readonly<z.infer<typeof itemMark>>;
export type PaperMark = Readonly<z.infer<typeof paperMark>>;
export type ToldPaperMark = Readonly<z.infer<typeof toldPaperMark>>;
export type ToldItemMark = ToldPaperMark['items'][number];
