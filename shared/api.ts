/**
 * The HTTP interface: every route of practice with who may call it, what it takes and gives, and the ways in which it
 * refuses. The server answers by this table, its OpenAPI description is made from it, and the page calls by it. Routes of
 * people and classes are in api-people.ts, all together in every-route.ts. In words: docs/api.md.
 */
import { z } from 'zod';
import { apiProblem } from './api-problem.ts';
import type { ApiRoute } from './api-route.ts';
import { bank } from './bank.ts';
import { formName } from './form-name.ts';
import { paperMark, publicPaper, savedAnswer } from './homework.ts';
import { issuedQuestion, proofSource } from './issued.ts';
import { moment, recall, skillId } from './memory.ts';
import { personExport } from './people.ts';
import { answerLine, answerRecord } from './practice.ts';
import { mark } from './question.ts';
import { settings } from './settings.ts';

export {
  type ApiProblem,
  type ApiProblemCode,
  apiProblem,
  apiProblemCode,
  commonProblems,
  roleProblems,
} from './api-problem.ts';
export { type ApiMethod, type ApiRoute, done, type FileReply, fileReply } from './api-route.ts';

/** How many answers one request may carry. */
export const MOST_ANSWERS = 200;
/** How many answers one reply may carry. */
export const MOST_FETCHED = 100;
/** How many of them in short. */
export const MOST_LINES = 1000;

/** Answers in the order in which they were given. Each is looked at by itself: a bad one doesn't hold up the others. */
export const answerBatch = z.strictObject({ answers: z.array(answerRecord).min(1).max(MOST_ANSWERS) });

/** The same before its answers have been looked at: none of them is, where there are too many. */
export const answerBatchEnvelope = z.strictObject({
  answers: z.custom<readonly unknown[]>(
    (value) => Array.isArray(value) && value.length >= 1 && value.length <= MOST_ANSWERS,
    formName('form.answers'),
  ),
});

/**
 * What became of one answer. kept: it is on the disk. already: one with this id was there before, which stays; its
 * number is told. refused: it never will be kept as it is; sending it again is no use.
 */
export const answerResult = z.discriminatedUnion('result', [
  z.strictObject({ result: z.literal('kept'), id: z.string(), number: z.number().int().min(1) }),
  z.strictObject({ result: z.literal('already'), id: z.string(), number: z.number().int().min(1) }),
  /** `id` is null where none could be read. */
  z.strictObject({ result: z.literal('refused'), id: z.string().nullable(), problem: apiProblem }),
]);

/** One result for each answer sent, in the order sent. */
export const answerResults = z.strictObject({ results: z.array(answerResult) });

const kept = {
  /** Order of arrival within the learner, from 1 and without gaps. */
  number: z.number().int().min(1),
  /** When it was kept, by the clock of the server; 0 where that wasn't noted yet. */
  arrivedAt: moment,
};

/** An answer as kept; an unreadable one was written by another version of this program and is still kept whole. */
export const keptAnswer = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('answer'),
    ...kept,
    answer: answerRecord,
    /** The mark that a later, better solver gave, where it differs; the first one stays in the answer. */
    correctedMark: mark.nullable(),
  }),
  z.strictObject({ kind: z.literal('unreadable'), ...kept, id: z.string(), message: z.string() }),
]);

export const answerPage = z.strictObject({
  /**
   * Which history this is; null while there is none. Another one than before: everything was erased, or a backup was put
   * back, and what this device has has to be sent again from the beginning.
   */
  history: z.string().nullable(),
  /** The highest number there is; 0 when there is none. */
  last: z.number().int().min(0),
  answers: z.array(keptAnswer),
});

/** Answers in short, in the order in which they arrived, as they count. */
export const linePage = z.strictObject({
  /** As in `answerPage`. */
  history: z.string().nullable(),
  last: z.number().int().min(0),
  /** How often marks in this history were corrected: another number than before, and lines fetched before are out of date. */
  corrections: z.number().int().min(0),
  lines: z.array(answerLine.extend({ number: z.number().int().min(1) })),
});

/** Recall states by skill; a skill that isn't in it is new. They follow from the answers of this history up to number `last`. */
export const recalls = z.strictObject({
  history: z.string().nullable(),
  last: z.number().int().min(0),
  recalls: z.record(skillId, recall),
});

export const linesQuery = z.strictObject({
  /** Only those with a higher number. */
  after: z.number().int().min(0).max(2_147_483_647).default(0),
  limit: z.number().int().min(1).max(MOST_LINES).default(MOST_LINES),
});

export const answersQuery = z.strictObject({
  /** Only answers with a higher number. */
  after: z.number().int().min(0).max(2_147_483_647).default(0),
  limit: z.number().int().min(1).max(MOST_FETCHED).default(50),
});

/** Erasing has to be meant: the learner is named once more. */
export const eraseQuery = z.strictObject({ confirm: z.string().max(64).default('') });
export const erased = z.strictObject({ answers: z.number().int().min(0) });

/** Everything kept about one learner. */
export const learnerExport = z.strictObject({
  format: z.literal('polewise-learner-1'),
  learner: z.string(),
  exportedAt: moment,
  history: z.string().nullable(),
  /** Where people sign in: the account, classes, and where one is signed in. No password and no token. */
  person: personExport.nullable().default(null),
  settings,
  recalls: z.record(skillId, recall),
  answers: z.array(
    z.strictObject({
      ...kept,
      /** Of the form that the record has. */
      recordVersion: z.number().int().min(1),
      /** As it was kept, also when this version of the program can't read it. */
      record: z.unknown(),
      correctedMark: z.unknown().nullable(),
      /** Where people sign in: what makes it a proof of what the learner can do. */
      proof: proofSource.nullable().default(null),
    }),
  ),
  /** Questions issued to the learner that wait for an answer. */
  issued: z.array(issuedQuestion).default([]),
  /** Homework that was begun. The mark only where its learner may look through the paper. */
  papers: z
    .array(
      z.strictObject({
        paper: publicPaper,
        begunAt: moment,
        submittedAt: moment.nullable(),
        answers: z.array(
          z.strictObject({ ...savedAnswer.shape, id: z.string(), number: z.number().int().min(1) }),
        ),
        hints: z.array(z.number().int().min(0)),
        mark: paperMark.nullable(),
      }),
    )
    .default([]),
});

export const health = z.strictObject({ status: z.literal('alive'), version: z.string() });
export const readiness = z.strictObject({ status: z.literal('ready') });

export const apiRoutes = {
  bank: {
    method: 'GET',
    path: '/api/bank',
    summary: 'The topics, with lessons, skills, recipes and written questions. Has an ETag.',
    role: 'learner',
    reply: bank,
    problems: [],
  },
  keepAnswers: {
    method: 'POST',
    path: '/api/answers',
    summary: 'Keeps answers, each exactly once by its id; when the reply comes, they are on the disk.',
    role: 'learner',
    body: answerBatch,
    reply: answerResults,
    problems: [
      'bad-answer',
      'answer-too-large',
      'foreign-learner',
      'on-open-paper',
      'too-busy',
      'store-unavailable',
    ],
  },
  answers: {
    method: 'GET',
    path: '/api/answers',
    summary: 'Answers in the order in which they arrived, a page at a time.',
    role: 'learner',
    query: answersQuery,
    reply: answerPage,
    problems: ['store-unavailable'],
  },
  lines: {
    method: 'GET',
    path: '/api/lines',
    summary: 'The same in short, as they count: large pages of what memory and lists need.',
    role: 'learner',
    query: linesQuery,
    reply: linePage,
    problems: ['store-unavailable'],
  },
  recalls: {
    method: 'GET',
    path: '/api/recalls',
    summary: 'The recall states that follow from all answers, in one reply.',
    role: 'learner',
    reply: recalls,
    problems: ['store-unavailable'],
  },
  settings: {
    method: 'GET',
    path: '/api/settings',
    summary: 'What the learner has set.',
    role: 'learner',
    reply: settings,
    problems: ['store-unavailable'],
  },
  putSettings: {
    method: 'PUT',
    path: '/api/settings',
    summary: 'Sets it: of each field what was changed last. The reply is what holds now.',
    role: 'learner',
    body: settings,
    reply: settings,
    problems: ['store-unavailable'],
  },
  exportLearner: {
    method: 'GET',
    path: '/api/export',
    summary: 'Everything kept about the learner, as one file.',
    role: 'learner',
    reply: learnerExport,
    problems: ['store-unavailable'],
  },
  eraseLearner: {
    method: 'DELETE',
    path: '/api/learner',
    summary:
      'Erases what the learner has practised, for good. Where people sign in, classes and homework stay.',
    role: 'learner',
    query: eraseQuery,
    reply: erased,
    problems: ['not-confirmed', 'store-unavailable'],
  },
  health: {
    method: 'GET',
    path: '/api/health',
    summary: 'Whether the server is alive.',
    role: 'nobody',
    reply: health,
    problems: [],
  },
  ready: {
    method: 'GET',
    path: '/api/ready',
    summary: 'Whether the server can do its work: the store answers, and it is not being stopped.',
    role: 'nobody',
    reply: readiness,
    problems: ['stopping', 'store-unavailable'],
  },
  description: {
    method: 'GET',
    path: '/api/openapi.json',
    summary: 'This description.',
    role: 'nobody',
    reply: z.looseObject({ openapi: z.string() }),
    problems: [],
  },
} as const satisfies Readonly<Record<string, ApiRoute>>;

export type AnswerBatch = Readonly<z.infer<typeof answerBatch>>;
export type AnswerResult = Readonly<z.infer<typeof answerResult>>;
export type KeptAnswer = Readonly<z.infer<typeof keptAnswer>>;
export type AnswerPage = Readonly<z.infer<typeof answerPage>>;
export type LinePage = Readonly<z.infer<typeof linePage>>;
export type LearnerExport = Readonly<z.infer<typeof learnerExport>>;
