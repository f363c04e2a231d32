/** The routes of homework: for learners, then for tutors. Class mode only. In words: docs/api.md and docs/homework.md. */
import { z } from 'zod';
import type { ApiProblemCode } from './api-problem.ts';
import { type ApiRoute, fileReply } from './api-route.ts';
import { homeworkId } from './homework.ts';
import {
  competenceView,
  homeworkWish,
  learnerSet,
  markedPaper,
  overrideWish,
  paperId,
  paperReview,
  paperRow,
  paperView,
  prepared,
  samplePaper,
  saveBatch,
  saveResults,
  setReport,
  setRow,
  setView,
  submitted,
  termView,
  typedMarks,
  typedResult,
} from './homework-views.ts';
import { moment } from './memory.ts';
import { classId, personId } from './people.ts';

const ofSet = z.strictObject({ set: homeworkId });
const ofPaper = z.strictObject({ paper: paperId });
const ofClass = z.strictObject({ class: classId });
/** In which times are told; UTC unless it is given. */
const inZone = z.strictObject({ zone: z.string().min(1).max(60).default('UTC') });
const ofPerson = z.strictObject({ person: personId });

const always = ['no-such-thing'] as const satisfies readonly ApiProblemCode[];

const working = [
  ...always,
  'not-open',
  'closed',
  'submitted',
  'withdrawn',
] as const satisfies readonly ApiProblemCode[];

const learner = { mode: 'class', role: 'learner' } as const;
const tutor = { mode: 'class', role: 'tutor' } as const;

const byLearners = {
  myHomework: {
    ...learner,
    method: 'GET',
    path: '/api/homework',
    summary: 'The learner’s sets, those that close last first, with where each stands.',
    reply: z.strictObject({ sets: z.array(learnerSet) }),
    problems: always,
  },
  beginPaper: {
    ...learner,
    method: 'POST',
    path: '/api/homework/:set/begin',
    params: ofSet,
    summary: 'The paper to go on with, or the next attempt’s; asked twice, the same one.',
    reply: paperView,
    problems: [...working, 'no-attempts-left', 'too-few-circuits'],
  },
  paper: {
    ...learner,
    method: 'GET',
    path: '/api/papers/:paper',
    params: ofPaper,
    summary: 'An own paper that was begun, with what was saved; nothing in it tells an answer.',
    reply: paperView,
    problems: [...always, 'withdrawn'],
  },
  saveAnswers: {
    ...learner,
    method: 'POST',
    path: '/api/papers/:paper/answers',
    params: ofPaper,
    summary: 'Saves answers, each once by its id, in order; of each item the last one counts.',
    body: saveBatch,
    reply: saveResults,
    problems: [...working, 'bad-answer'],
  },
  askHint: {
    ...learner,
    method: 'POST',
    path: '/api/papers/:paper/hint',
    params: ofPaper,
    summary: 'The hint for an item, where the set allows it; that it was asked for is kept.',
    body: z.strictObject({ item: z.number().int().min(0).max(99) }),
    reply: z.strictObject({ item: z.number().int(), text: z.string() }),
    problems: [...working, 'no-hints'],
  },
  submitPaper: {
    ...learner,
    method: 'POST',
    path: '/api/papers/:paper/submit',
    params: ofPaper,
    summary: 'Hands the paper in as it was saved; twice is once.',
    reply: submitted,
    problems: [...always, 'not-open', 'closed', 'withdrawn'],
  },
  reviewPaper: {
    ...learner,
    method: 'GET',
    path: '/api/papers/:paper/review',
    params: ofPaper,
    summary: 'The marked paper with answers, explanations and what to revise, when it may be looked through.',
    reply: paperReview,
    problems: [...always, 'no-review', 'withdrawn'],
  },
} as const satisfies Readonly<Record<string, ApiRoute>>;

const bySetters = {
  classHomework: {
    ...tutor,
    method: 'GET',
    path: '/api/classes/:class/homework',
    params: ofClass,
    summary: 'The sets of a class, the newest first.',
    reply: z.strictObject({ sets: z.array(setRow) }),
    problems: always,
  },
  draftHomework: {
    ...tutor,
    method: 'POST',
    path: '/api/classes/:class/homework',
    params: ofClass,
    summary: 'Makes a draft from what is wished.',
    body: homeworkWish,
    reply: setView,
    problems: [...always, 'bad-set'],
  },
  homework: {
    ...tutor,
    method: 'GET',
    path: '/api/homework/:set',
    params: ofSet,
    summary: 'One set with its places.',
    reply: setView,
    problems: always,
  },
  changeHomework: {
    ...tutor,
    method: 'PUT',
    path: '/api/homework/:set',
    params: ofSet,
    summary: 'Makes a draft anew from what is wished.',
    body: homeworkWish,
    reply: setView,
    problems: [...always, 'bad-set', 'already-issued'],
  },
  withdrawHomework: {
    ...tutor,
    method: 'DELETE',
    path: '/api/homework/:set',
    params: ofSet,
    summary:
      'Erases a draft; withdraws a set that was issued: learners no longer see it, what they did is kept.',
    reply: z.strictObject({ result: z.enum(['erased', 'withdrawn']) }),
    problems: always,
  },
  sampleHomework: {
    ...tutor,
    method: 'GET',
    path: '/api/homework/:set/sample',
    params: ofSet,
    query: z.strictObject({ number: z.number().int().min(1).max(1000).default(1) }),
    summary: 'A paper as a learner would get one, with the right answers; another number gives another one.',
    reply: samplePaper,
    problems: [...always, 'bad-set'],
  },
  issueHomework: {
    ...tutor,
    method: 'POST',
    path: '/api/homework/:set/issue',
    params: ofSet,
    summary: 'Issues a set to its class; twice is once.',
    reply: setView,
    problems: [...always, 'bad-set', 'withdrawn'],
  },
  closeLater: {
    ...tutor,
    method: 'POST',
    path: '/api/homework/:set/closing',
    params: ofSet,
    summary: 'Gives a set that is issued and has not closed a later closing time, for everybody.',
    body: z.strictObject({ closesAt: moment }),
    reply: setView,
    problems: [...always, 'bad-set', 'not-issued', 'closed'],
  },
  prepareHomework: {
    ...tutor,
    method: 'POST',
    path: '/api/homework/:set/prepare',
    params: ofSet,
    summary: 'Makes some of the papers that are missing; to be asked again until all are made.',
    reply: prepared,
    problems: [...always, 'not-issued', 'too-few-circuits'],
  },
  homeworkPapers: {
    ...tutor,
    method: 'GET',
    path: '/api/homework/:set/papers',
    params: ofSet,
    summary: 'Everybody’s papers: begun, submitted, marked.',
    reply: z.strictObject({ papers: z.array(paperRow), waiting: z.number().int().min(0) }),
    problems: always,
  },
} as const satisfies Readonly<Record<string, ApiRoute>>;

const byMarkers = {
  homeworkReport: {
    ...tutor,
    method: 'GET',
    path: '/api/homework/:set/report',
    params: ofSet,
    summary: 'What a set says of its class.',
    reply: setReport,
    problems: always,
  },
  markedPaper: {
    ...tutor,
    method: 'GET',
    path: '/api/papers/:paper/marked',
    params: ofPaper,
    summary: 'One marked paper with answers, explanations and overrides.',
    reply: markedPaper,
    problems: [...always, 'not-handed-in'],
  },
  overrideMark: {
    ...tutor,
    method: 'POST',
    path: '/api/papers/:paper/overrides',
    params: ofPaper,
    summary: 'Gives an item other marks, with a reason that is kept; the first mark stays beside it.',
    body: overrideWish,
    reply: markedPaper,
    problems: [...always, 'bad-mark', 'not-handed-in'],
  },
  typeMarks: {
    ...tutor,
    method: 'POST',
    path: '/api/homework/:set/typed',
    params: ofSet,
    summary: 'Takes the marks of a paper that was written on paper, by its code.',
    body: typedMarks,
    reply: typedResult,
    problems: [...always, 'no-such-code', 'bad-mark', 'not-issued'],
  },
  papersPdf: {
    ...tutor,
    method: 'GET',
    path: '/api/homework/:set/papers.pdf',
    params: ofSet,
    query: inZone,
    summary: 'All papers to print, each with name, code and drawings.',
    reply: fileReply('application/pdf'),
    problems: [...always, 'not-issued', 'not-prepared'],
  },
  keyPdf: {
    ...tutor,
    method: 'GET',
    path: '/api/homework/:set/key.pdf',
    params: ofSet,
    summary: 'The answers to all papers, by code.',
    reply: fileReply('application/pdf'),
    problems: [...always, 'not-issued', 'not-prepared'],
  },
  marksCsv: {
    ...tutor,
    method: 'GET',
    path: '/api/homework/:set/marks.csv',
    params: ofSet,
    summary: 'The marks as a table.',
    reply: fileReply('text/csv; charset=utf-8'),
    problems: always,
  },
  statements: {
    ...tutor,
    method: 'GET',
    path: '/api/homework/:set/statements.json',
    params: ofSet,
    summary: 'The marks as xAPI statements, under pseudonyms.',
    reply: fileReply('application/json; charset=utf-8'),
    problems: always,
  },
  package30: {
    ...tutor,
    method: 'GET',
    path: '/api/homework/:set/package-3.0.zip',
    params: ofSet,
    summary: 'The sample paper as a QTI 3.0 package, with the right answers.',
    reply: fileReply('application/zip'),
    problems: [...always, 'bad-set'],
  },
  package22: {
    ...tutor,
    method: 'GET',
    path: '/api/homework/:set/package-2.2.zip',
    params: ofSet,
    summary: 'The same as a QTI 2.2 package.',
    reply: fileReply('application/zip'),
    problems: [...always, 'bad-set'],
  },
  term: {
    ...tutor,
    method: 'GET',
    path: '/api/classes/:class/term',
    params: ofClass,
    summary: 'What all issued sets of a class say together.',
    reply: termView,
    problems: always,
  },
  competence: {
    ...tutor,
    method: 'GET',
    path: '/api/classes/:class/competence',
    params: ofClass,
    query: z.strictObject({
      /** Refreshers that are due within so many days. */
      days: z.number().int().min(0).max(3650).default(30),
    }),
    summary: 'Skills by people: held, fading, not yet; and refreshers due.',
    reply: competenceView,
    problems: always,
  },
  evidencePdf: {
    ...tutor,
    method: 'GET',
    path: '/api/people/:person/evidence.pdf',
    params: ofPerson,
    query: inZone,
    summary: 'What one person has proven, with the drawings answered.',
    reply: fileReply('application/pdf'),
    problems: always,
  },
} as const satisfies Readonly<Record<string, ApiRoute>>;

export const homeworkRoutes = { ...byLearners, ...bySetters, ...byMarkers } as const;
