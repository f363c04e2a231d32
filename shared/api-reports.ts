/** The routes of reports: what tutors are told of a class, each a line here and in `src/server/homework/reports`. */
import { z } from 'zod';
import type { ApiRoute } from './api-route.ts';
import { always, ofClass, ofSet, tutor } from './homework-asked.ts';
import { competenceView, setReport, termView } from './homework-views.ts';
import { proofsWanted } from './issued.ts';

export const reportRoutes = {
  homeworkReport: {
    ...tutor,
    method: 'GET',
    path: '/api/homework/:set/report',
    params: ofSet,
    summary: 'What a set says of its class.',
    reply: setReport,
    problems: always,
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
      proofs: proofsWanted.default('any'),
    }),
    summary: 'Skills by people: held, fading, not yet; and refreshers due.',
    reply: competenceView,
    problems: always,
  },
} as const satisfies Readonly<Record<string, ApiRoute>>;

export type ReportName = keyof typeof reportRoutes;
