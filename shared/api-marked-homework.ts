/** The routes of what was handed in: marks, evidence, and files of them. Reports are in `api-reports.ts`, the others in `api-homework.ts`. */
import { z } from 'zod';
import { type ApiRoute, fileReply } from './api-route.ts';
import { always, ofPaper, ofSet, tutor } from './homework-asked.ts';
import { markedPaper, overrideWish, typedMarks, typedResult } from './homework-views.ts';
import { proofsWanted } from './issued.ts';
import { personId } from './people.ts';

/** In which times are told; UTC unless it is given. */
const inZone = z.strictObject({ zone: z.string().min(1).max(60).default('UTC') });
const ofPerson = z.strictObject({ person: personId });

export const markedHomeworkRoutes = {
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
    problems: [...always, 'bad-mark', 'marked-meanwhile', 'not-handed-in'],
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
  evidencePdf: {
    ...tutor,
    method: 'GET',
    path: '/api/people/:person/evidence.pdf',
    params: ofPerson,
    query: inZone.extend({ proofs: proofsWanted.default('any') }),
    summary: 'What one person has proven, with the drawings answered.',
    reply: fileReply('application/pdf'),
    problems: always,
  },
} as const satisfies Readonly<Record<string, ApiRoute>>;
