/** What is asked and told about homework over HTTP; the routes are in `api-homework.ts`. In words: docs/homework.md. */
import { z } from 'zod';
import { apiProblem } from './api-problem.ts';
import { formName } from './form-name.ts';
import {
  helpAllowed,
  homeworkId,
  homeworkSet,
  paper,
  paperItem,
  publicPaper,
  reviewAllowed,
  savedAnswer,
  toldPaperMark,
  triedElsewhere,
  triedPlace,
} from './homework.ts';
import {
  classReport,
  competenceMatrix,
  learnerReport,
  paperTotal,
  refresher,
  termReport,
} from './homework-reports.ts';
import { proofsWanted } from './issued.ts';
import { circuitId, moment, skillId } from './memory.ts';
import { newSetTitle } from './new-names.ts';
import { classId } from './people.ts';
import { learnerId } from './practice.ts';

import { answer, publicQuestion, toldMark } from './question.ts';

/** The name of one paper in addresses; it tells nothing of whose it is. */
export const paperId = z
  .string()
  .max(64)
  .regex(/^[A-Za-z0-9_-]+$/, formName('form.id'));

/** What a tutor chooses; places follow from it. */
export const homeworkWish = z
  .strictObject({
    title: newSetTitle,
    /** Every skill of these topics that circuits can be made for. */
    topics: z.array(z.string().min(1).max(64)).max(40).default([]),
    skills: z.array(skillId).max(40).default([]),
    items: z.number().int().min(1).max(60),
    /** Which part of the range of sizes that a recipe has. */
    level: z.enum(['small', 'middle', 'large']).default('middle'),
    marksEach: z.number().int().min(1).max(100).default(1),
    opensAt: moment,
    closesAt: moment,
    attempts: z.number().int().min(1).max(10).default(1),
    counts: homeworkSet.shape.counts.default('best'),
    help: helpAllowed.default('none'),
    review: reviewAllowed.default('after-closing'),
    /** Sat while somebody watches; what is shown on it can be told apart from what was done alone. */
    supervised: z.boolean().default(false),
  })
  .refine(({ topics, skills }) => topics.length + skills.length > 0, {
    message: formName('form.topicsOrSkills'),
    path: ['skills'],
  });

/** Where a set stands. `draft`: nobody but tutors sees it. */
export const setState = z.enum(['draft', 'before', 'open', 'closed', 'withdrawn']);

const setTimes = {
  id: homeworkId,
  title: z.string(),
  opensAt: moment,
  closesAt: moment,
};

/** A set as its tutors see it. */
export const setView = z.strictObject({
  set: homeworkSet,
  wish: homeworkWish,
  class: classId,
  state: setState,
  madeBy: learnerId,
  madeAt: moment,
  issuedAt: moment.nullable(),
  withdrawnAt: moment.nullable(),
});

const count = z.number().int().min(0);

export const setRow = z.strictObject({
  ...setTimes,
  state: setState,
  items: count,
  outOf: count,
  issuedAt: moment.nullable(),
  /** Learners of the class now, those who have a paper, and those who have submitted one or let it close with answers. */
  learners: count,
  papers: count,
  handedIn: count,
});

/** One attempt as its learner sees it from outside. */
const attemptView = z.strictObject({
  paper: paperId,
  attempt: z.number().int().min(1),
  begunAt: moment,
  /** Null while it can still be worked on, and where it closed without being submitted. */
  submittedAt: moment.nullable(),
  /** Whether the marked paper may be looked through now. */
  mayReview: z.boolean(),
  /** Null as long as it may not be looked through, and where nothing was handed in. */
  total: paperTotal.nullable(),
});

/** A set as a learner sees it. What it asks is told only when it has opened. */
export const learnerSet = z.strictObject({
  ...setTimes,
  classTitle: z.string(),
  state: z.enum(['before', 'open', 'closed']),
  items: count,
  outOf: count,
  attemptsAllowed: z.number().int().min(1),
  help: helpAllowed,
  review: reviewAllowed,
  attempts: z.array(attemptView),
  /** Whether another attempt can be begun, or the one that was begun gone on with. */
  mayBegin: z.boolean(),
});

/** An answer as it was saved; its id was made where it was given. */
export const keptSave = z.strictObject({
  id: z.string(),
  number: z.number().int().min(1),
  item: savedAnswer.shape.item,
  answer,
  at: moment,
  secondsUsed: savedAnswer.shape.secondsUsed,
});

/** A paper to work on: nothing in it tells an answer. */
export const paperView = z.strictObject({
  id: paperId,
  paper: publicPaper,
  /** By the clock of the server, which alone decides when it closes. */
  now: moment,
  submittedAt: moment.nullable(),
  /** Whether answers are still taken. */
  open: z.boolean(),
  /** In the order of saving; of each item the last one counts. */
  saved: z.array(keptSave),
  /** Hints that were asked for. */
  hints: z.array(z.strictObject({ item: savedAnswer.shape.item, text: z.string() })),
});

/** How many answers one request may save. */
export const MOST_SAVED = 100;

export const saveBatch = z.strictObject({
  answers: z
    .array(
      z.strictObject({
        id: z
          .string()
          .min(1)
          .max(64)
          .regex(/^[A-Za-z0-9_-]+$/, formName('form.id')),
        item: savedAnswer.shape.item,
        answer,
        secondsUsed: z.number().min(0).max(1_000_000).nullable().default(null),
      }),
    )
    .min(1)
    .max(MOST_SAVED),
});

/** One for each answer sent, in order. kept and already: it is on the disk. refused: it never will be kept. */
export const saveResults = z.strictObject({
  now: moment,
  results: z.array(
    z.discriminatedUnion('result', [
      z.strictObject({ result: z.literal('kept'), id: z.string(), number: z.number().int().min(1) }),
      z.strictObject({ result: z.literal('already'), id: z.string(), number: z.number().int().min(1) }),
      z.strictObject({ result: z.literal('refused'), id: z.string(), problem: apiProblem }),
    ]),
  ),
});

export const submitted = z.strictObject({
  paper: paperId,
  submittedAt: moment,
  /** Items of which an answer counts. */
  answered: count,
  items: count,
  mayReview: z.boolean(),
});

/**
 * Circuits that are marked and run nowhere for the one who asks, because they stand on own papers that are open; by
 * fingerprint, so that they are known however their devices are named.
 */
export const guardedCircuits = z.strictObject({
  papers: z.array(
    z.strictObject({
      paper: paperId,
      title: z.string(),
      /** Until the set closes, or the paper is handed in before that. */
      until: moment,
      circuits: z.array(circuitId),
    }),
  ),
});

/** That such a circuit was to be marked or run on the page, which didn't. */
export const triedWish = z.strictObject({ circuit: circuitId, place: triedPlace });

/** A marked paper with everything in it. */
export const paperReview = z.strictObject({
  id: paperId,
  title: z.string(),
  paper,
  /** The answers that count. */
  answers: z.array(savedAnswer),
  mark: toldPaperMark,
  report: learnerReport,
  submittedAt: moment.nullable(),
});

export const markedPaper = z.strictObject({
  ...paperReview.shape,
  code: z.string(),
  name: z.string(),
  /** Items whose circuit was to be marked or run elsewhere while the paper was open. */
  tried: z.array(triedElsewhere),
});

/** A paper as a learner would get one, with the right answers; nobody gets this one. */
export const samplePaper = z.strictObject({
  title: z.string(),
  items: z.array(
    z.strictObject({
      place: z.number().int().min(1),
      item: paperItem,
      question: publicQuestion,
      /** What is right and why; as if nothing had been answered. */
      mark: toldMark,
    }),
  ),
});

/** How far making the papers has come; ask again until `made` is `of`. */
export const prepared = z.strictObject({ made: count, of: count });

export const paperRow = z.strictObject({
  id: paperId,
  code: z.string(),
  learner: learnerId,
  name: z.string(),
  attempt: z.number().int().min(1),
  madeAt: moment,
  begunAt: moment.nullable(),
  submittedAt: moment.nullable(),
  markedAt: moment.nullable(),
  /** Items of which something was saved. */
  saved: count,
  /** Of how many items the circuit was to be marked or run elsewhere while the paper was open. */
  tried: count,
  total: paperTotal.nullable(),
});

export const overrideWish = z.strictObject({
  /** Index in the paper's items. */
  item: savedAnswer.shape.item,
  earned: z.number().min(0).max(100).multipleOf(0.01),
  reason: z.string().trim().min(1).max(1000),
  /** How many overrides the item had when they were looked at; where there are more since, nothing is changed. */
  known: z.number().int().min(0).optional(),
});

/** Marks of a paper that was written on paper: one for each item, null where it was left out. */
export const typedMarks = z.strictObject({
  code: z.string().min(1).max(40),
  marks: z.array(z.number().min(0).max(100).multipleOf(0.01).nullable()).min(1).max(100),
});

export const typedResult = z.strictObject({
  paper: paperId,
  learner: learnerId,
  name: z.string(),
  attempt: z.number().int().min(1),
  total: paperTotal,
});

const named = z.strictObject({ id: learnerId, name: z.string() });

/** `waiting`: papers that have still to be marked; the report is without them, ask again. */
export const setReport = z.strictObject({
  set: homeworkSet,
  state: setState,
  people: z.array(named),
  waiting: count,
  report: classReport,
});

export const termView = z.strictObject({
  people: z.array(named),
  sets: z.array(z.strictObject(setTimes)),
  waiting: count,
  report: termReport,
});

export const competenceView = z.strictObject({
  people: z.array(named),
  /** Of which proofs it was made. */
  proofs: proofsWanted,
  matrix: competenceMatrix,
  /** Due within the days asked for. */
  refreshers: z.array(refresher),
});

export type HomeworkWish = Readonly<z.output<typeof homeworkWish>>;
export type SetState = z.infer<typeof setState>;
export type SetView = Readonly<z.infer<typeof setView>>;
export type SetRow = Readonly<z.infer<typeof setRow>>;
export type LearnerSet = Readonly<z.infer<typeof learnerSet>>;
export type KeptSave = Readonly<z.infer<typeof keptSave>>;
export type PaperView = Readonly<z.infer<typeof paperView>>;
export type SaveBatch = Readonly<z.infer<typeof saveBatch>>;
export type SaveResults = Readonly<z.infer<typeof saveResults>>;
export type Submitted = Readonly<z.infer<typeof submitted>>;
export type PaperReview = Readonly<z.infer<typeof paperReview>>;
export type GuardedCircuits = Readonly<z.infer<typeof guardedCircuits>>;
export type MarkedPaper = Readonly<z.infer<typeof markedPaper>>;
export type SamplePaper = Readonly<z.infer<typeof samplePaper>>;
export type PaperRow = Readonly<z.infer<typeof paperRow>>;
export type OverrideWish = Readonly<z.infer<typeof overrideWish>>;
export type TypedMarks = Readonly<z.infer<typeof typedMarks>>;
export type TypedResult = Readonly<z.infer<typeof typedResult>>;
export type SetReport = Readonly<z.infer<typeof setReport>>;
export type TermView = Readonly<z.infer<typeof termView>>;
export type CompetenceView = Readonly<z.infer<typeof competenceView>>;
