/** The routes of learners' own homework: papers, and what of practice bears on them. The others are in `api-homework.ts`. */
import { z } from 'zod';
import type { ApiProblemCode } from './api-problem.ts';
import { type ApiRoute, done } from './api-route.ts';
import { always, learner, ofPaper, ofSet } from './homework-asked.ts';
import {
  guardedCircuits,
  learnerSet,
  paperReview,
  paperView,
  saveBatch,
  saveResults,
  submitted,
  triedWish,
} from './homework-views.ts';
import { supply, supplyWish } from './issued.ts';

const working = [
  ...always,
  'not-open',
  'closed',
  'submitted',
  'withdrawn',
] as const satisfies readonly ApiProblemCode[];

export const ownHomeworkRoutes = {
  myHomework: {
    ...learner,
    method: 'GET',
    path: '/api/homework',
    summary: 'The learner’s sets, the most urgent first, with where each stands.',
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
  issueQuestions: {
    ...learner,
    method: 'POST',
    path: '/api/questions',
    summary:
      'Issues questions of practice ahead, for skills that may come next and of which the device has few.',
    body: supplyWish,
    reply: supply,
    problems: [],
  },
  guardedCircuits: {
    ...learner,
    method: 'GET',
    path: '/api/guarded-circuits',
    summary: 'The circuits of own papers that are open: nowhere are they marked or run.',
    reply: guardedCircuits,
    problems: [],
  },
  triedElsewhere: {
    ...learner,
    method: 'POST',
    path: '/api/guarded-circuits/tried',
    summary: 'Notes for the tutor that such a circuit was to be marked or run on the page.',
    body: triedWish,
    reply: done,
    problems: [],
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
