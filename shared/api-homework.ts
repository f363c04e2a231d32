/** The routes of homework: here those of sets, with the others beside them. Class mode only. In words: docs/api.md and docs/homework.md. */
import { z } from 'zod';
import { markedHomeworkRoutes } from './api-marked-homework.ts';
import { ownHomeworkRoutes } from './api-own-homework.ts';
import { reportRoutes } from './api-reports.ts';
import type { ApiRoute } from './api-route.ts';
import { always, ofClass, ofSet, tutor } from './homework-asked.ts';
import { homeworkWish, paperRow, prepared, samplePaper, setRow, setView } from './homework-views.ts';
import { moment } from './memory.ts';

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

export const homeworkRoutes = {
  ...ownHomeworkRoutes,
  ...bySetters,
  ...reportRoutes,
  ...markedHomeworkRoutes,
} as const;
