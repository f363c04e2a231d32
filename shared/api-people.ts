/** The routes of people and classes; who may call each, what it takes and gives. In words: docs/classes.md. */
import { z } from 'zod';
import { enteringRoutes } from './api-entering.ts';
import { type ApiRoute, done, fileReply } from './api-route.ts';
import { newClassTitle, newIntake, newName } from './new-names.ts';
import {
  classDetail,
  classId,
  classSummary,
  displayName,
  entryLink,
  manner,
  partOfName,
  person,
  personId,
  personRole,
} from './people.ts';
import { problem } from './problem.ts';

/** How many learners a class may have, and how many may be added at once. */
export const MOST_IN_CLASS = 1000;
export const MOST_ADDED = 400;

export { type Me, me } from './api-entering.ts';

export const personWithLink = z.strictObject({ person, link: entryLink });

/** A roster as text: one table of names, or the files of a OneRoster 1.1 export by their names. */
export const rosterIn = z.discriminatedUnion('format', [
  z.strictObject({ format: z.literal('csv'), text: z.string().max(500_000) }),
  z.strictObject({
    format: z.literal('oneroster'),
    files: z.record(z.string().max(60), z.string().max(1_000_000)),
    /** Which class of those in the files, by its sourcedId; not wanted where there is only one. */
    class: z.string().max(200).optional(),
  }),
]);

export const rosterLine = z.strictObject({
  name: displayName,
  manner,
  /** new: made now. joined: was there and has come into the class. already: was in the class. */
  result: z.enum(['new', 'joined', 'already']),
});

export const rosterResult = z.discriminatedUnion('result', [
  z.strictObject({
    result: z.literal('taken'),
    /** False where it was only looked at. */
    kept: z.boolean(),
    lines: z.array(rosterLine),
    /** What was passed over, and why, in words. */
    passedOver: z.array(z.string()),
  }),
  /** Nothing was taken over. */
  z.strictObject({ result: z.literal('mistakes'), problems: z.array(problem) }),
]);

const classParams = z.strictObject({ class: classId });
const personParams = z.strictObject({ person: personId });
const flag = z.enum(['yes', 'no']);

export const peopleRoutes = {
  ...enteringRoutes,
  classes: {
    method: 'GET',
    path: '/api/classes',
    summary: 'The classes that one is tutor of; all of them for the administrator.',
    role: 'tutor',
    mode: 'class',
    reply: z.strictObject({ classes: z.array(classSummary) }),
    problems: [],
  },
  newClass: {
    method: 'POST',
    path: '/api/classes',
    summary: 'Makes a class; who makes it is its tutor.',
    role: 'tutor',
    mode: 'class',
    body: z.strictObject({ title: newClassTitle, intake: newIntake.nullable().default(null) }),
    reply: classDetail,
    problems: [],
  },
  class: {
    method: 'GET',
    path: '/api/classes/:class',
    summary: 'One class with its joining code, tutors and learners.',
    role: 'tutor',
    mode: 'class',
    params: classParams,
    reply: classDetail,
    problems: ['no-such-thing'],
  },
  changeClass: {
    method: 'PUT',
    path: '/api/classes/:class',
    summary:
      'Changes title, intake, whether it may be joined, and whether it has ended; what isn’t named stays.',
    role: 'tutor',
    mode: 'class',
    params: classParams,
    body: z.strictObject({
      title: newClassTitle.optional(),
      intake: newIntake.nullable().optional(),
      joiningOpen: z.boolean().optional(),
      ended: z.boolean().optional(),
    }),
    reply: classDetail,
    problems: ['no-such-thing'],
  },
  eraseClass: {
    method: 'DELETE',
    path: '/api/classes/:class',
    summary: 'Erases a class with its homework, for good. Its people and their practice stay.',
    role: 'admin',
    mode: 'class',
    params: classParams,
    query: z.strictObject({ confirm: z.string().max(64) }),
    reply: done,
    problems: ['no-such-thing', 'not-confirmed'],
  },
  newCode: {
    method: 'POST',
    path: '/api/classes/:class/code',
    summary: 'Gives the class another joining code; the one before no longer works.',
    role: 'tutor',
    mode: 'class',
    params: classParams,
    reply: classDetail,
    problems: ['no-such-thing'],
  },
  addLearners: {
    method: 'POST',
    path: '/api/classes/:class/learners',
    summary: 'Makes learners in the class by their names, each with a link to hand over.',
    role: 'tutor',
    mode: 'class',
    params: classParams,
    body: z.strictObject({ names: z.array(newName).min(1).max(MOST_ADDED) }),
    reply: z.strictObject({ people: z.array(personWithLink) }),
    problems: ['no-such-thing', 'class-full', 'name-alike'],
  },
  removeMember: {
    method: 'DELETE',
    path: '/api/classes/:class/learners/:person',
    summary: 'Takes a learner out of the class. The person and what was practised stay.',
    role: 'tutor',
    mode: 'class',
    params: z.strictObject({ class: classId, person: personId }),
    reply: classDetail,
    problems: ['no-such-thing'],
  },
  takeRoster: {
    method: 'POST',
    path: '/api/classes/:class/roster',
    summary: 'Takes a roster over into the class, or only looks what would come of it. Nobody is taken out.',
    role: 'tutor',
    mode: 'class',
    params: classParams,
    query: z.strictObject({ look: flag.default('no') }),
    body: rosterIn,
    reply: rosterResult,
    problems: ['no-such-thing', 'class-full'],
  },
  giveRoster: {
    method: 'GET',
    path: '/api/classes/:class/roster',
    summary: 'The class as one CSV table, or as the files of OneRoster 1.1 in a zip.',
    role: 'tutor',
    mode: 'class',
    params: classParams,
    query: z.strictObject({ format: z.enum(['csv', 'oneroster']) }),
    reply: fileReply('text/csv', 'application/zip'),
    problems: ['no-such-thing'],
  },
  slips: {
    method: 'GET',
    path: '/api/classes/:class/slips.pdf',
    summary: 'Slips with the joining code, to cut apart and hand out.',
    role: 'tutor',
    mode: 'class',
    params: classParams,
    query: z.strictObject({
      /** How many; as many as there are learners in the class, or 12 where there are none. */
      count: z.number().int().min(1).max(MOST_ADDED).optional(),
    }),
    reply: fileReply('application/pdf'),
    problems: ['no-such-thing'],
  },
  linkSlips: {
    method: 'POST',
    path: '/api/classes/:class/slips.pdf',
    summary:
      'Slips with a name and a fresh link each, for the learners named, or for all who have no password yet.',
    role: 'tutor',
    mode: 'class',
    params: classParams,
    body: z.strictObject({ people: z.array(personId).max(MOST_ADDED).optional() }),
    reply: fileReply('application/pdf'),
    problems: ['no-such-thing'],
  },
  newLink: {
    method: 'POST',
    path: '/api/people/:person/link',
    summary: 'A link for somebody to sign in with, once, within seven days; the one before no longer works.',
    role: 'tutor',
    mode: 'class',
    params: personParams,
    reply: personWithLink,
    problems: ['no-such-thing'],
  },
  endSessionsOf: {
    method: 'DELETE',
    path: '/api/people/:person/sessions',
    summary: 'Ends all sessions of somebody.',
    role: 'tutor',
    mode: 'class',
    params: personParams,
    reply: z.strictObject({ ended: z.number().int().min(0) }),
    problems: ['no-such-thing'],
  },
  renamePerson: {
    method: 'PUT',
    path: '/api/people/:person',
    summary: 'Changes what somebody is called.',
    role: 'tutor',
    mode: 'class',
    params: personParams,
    body: z.strictObject({ name: newName }),
    reply: z.strictObject({ person }),
    problems: ['no-such-thing'],
  },
  people: {
    method: 'GET',
    path: '/api/people',
    summary: 'Everybody, by name, a page at a time.',
    role: 'admin',
    mode: 'class',
    query: z.strictObject({
      /** Part of a name, or of a name for signing in. */
      find: partOfName.default(''),
      from: z.number().int().min(0).max(1_000_000).default(0),
      limit: z.number().int().min(1).max(200).default(100),
    }),
    reply: z.strictObject({ total: z.number().int().min(0), people: z.array(person) }),
    problems: [],
  },
  newPerson: {
    method: 'POST',
    path: '/api/people',
    summary: 'Makes somebody of any role, with a link to hand over.',
    role: 'admin',
    mode: 'class',
    body: z.strictObject({ name: newName, role: personRole }),
    reply: personWithLink,
    problems: [],
  },
  changeRole: {
    method: 'PUT',
    path: '/api/people/:person/role',
    summary: 'Changes what somebody may do. All sessions of that person end.',
    role: 'admin',
    mode: 'class',
    params: personParams,
    body: z.strictObject({ role: personRole }),
    reply: z.strictObject({ person }),
    problems: ['no-such-thing', 'last-admin'],
  },
  erasePerson: {
    method: 'DELETE',
    path: '/api/people/:person',
    summary: 'Erases a person with everything kept about them, for good.',
    role: 'admin',
    mode: 'class',
    params: personParams,
    query: z.strictObject({ confirm: z.string().max(64) }),
    reply: done,
    problems: ['no-such-thing', 'not-confirmed', 'last-admin'],
  },
  exportPerson: {
    method: 'GET',
    path: '/api/people/:person/export',
    summary: 'Everything kept about a person, as one file.',
    role: 'admin',
    mode: 'class',
    params: personParams,
    reply: fileReply('application/json'),
    problems: ['no-such-thing'],
  },
  addTutor: {
    method: 'POST',
    path: '/api/classes/:class/tutors',
    summary: 'Makes a tutor (or an administrator) tutor of this class too.',
    role: 'admin',
    mode: 'class',
    params: classParams,
    body: z.strictObject({ person: personId }),
    reply: classDetail,
    problems: ['no-such-thing'],
  },
  removeTutor: {
    method: 'DELETE',
    path: '/api/classes/:class/tutors/:person',
    summary: 'Ends that somebody is tutor of the class.',
    role: 'admin',
    mode: 'class',
    params: z.strictObject({ class: classId, person: personId }),
    reply: classDetail,
    problems: ['no-such-thing'],
  },
} as const satisfies Readonly<Record<string, ApiRoute>>;

export type PersonWithLink = Readonly<z.infer<typeof personWithLink>>;
export type RosterIn = Readonly<z.infer<typeof rosterIn>>;
export type RosterLine = Readonly<z.infer<typeof rosterLine>>;
export type RosterResult = Readonly<z.infer<typeof rosterResult>>;
