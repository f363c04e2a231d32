/** The routes of coming in and of one's own sessions; the rest of people and classes is in `api-people.ts`. */
import { z } from 'zod';
import { type ApiRoute, done } from './api-route.ts';
import { moment } from './memory.ts';
import { newName } from './new-names.ts';
import {
  classId,
  classTitle,
  joiningCode,
  manner,
  password,
  person,
  personId,
  signInName,
} from './people.ts';

const newAccount = { name: newName, signIn: signInName, password };
/** Who asks, as far as the page has to know. */
export const me = z.strictObject({
  mode: z.enum(['solo', 'class']),
  /** Null where nobody has signed in, and where nobody has to. */
  person: z
    .strictObject({
      ...person.shape,
      classes: z.array(z.strictObject({ id: classId, title: classTitle, manner })),
    })
    .nullable(),
  /** Whether there is no administrator yet, so that the key which the server has printed makes one. */
  firstRun: z.boolean(),
});

const session = z.strictObject({
  id: personId,
  /** What the browser said it is, in short: `Firefox, Linux`. */
  device: z.string(),
  begunAt: moment,
  /** To within some minutes. */
  seenAt: moment,
  /** The one that asks. */
  current: z.boolean(),
});

export const enteringRoutes = {
  me: {
    method: 'GET',
    path: '/api/me',
    summary: 'Who asks, whether people sign in here, and whether an administrator is wanted first.',
    role: 'nobody',
    reply: me,
    problems: ['store-unavailable'],
  },
  firstRun: {
    method: 'POST',
    path: '/api/first-run',
    summary: 'Makes the first administrator, with the key that the server has printed, and signs in.',
    role: 'nobody',
    mode: 'class',
    body: z.strictObject({ key: z.string().max(100), ...newAccount }),
    reply: me,
    problems: ['first-run-refused', 'name-taken', 'weak-password', 'too-busy', 'store-unavailable'],
  },
  signIn: {
    method: 'POST',
    path: '/api/sign-in',
    summary: 'Signs in with name and password. Sets the cookie.',
    role: 'nobody',
    mode: 'class',
    body: z.strictObject({ signIn: z.string().max(200), password: z.string().max(400) }),
    reply: me,
    problems: ['sign-in-refused', 'too-many-tries', 'too-busy', 'store-unavailable'],
  },
  signInWithLink: {
    method: 'POST',
    path: '/api/sign-in/link',
    summary:
      'Signs in with the token of a link, once. Earlier sessions end and the password is to be chosen anew.',
    role: 'nobody',
    mode: 'class',
    body: z.strictObject({ token: z.string().max(200) }),
    reply: me,
    problems: ['link-refused', 'store-unavailable'],
  },
  signOut: {
    method: 'POST',
    path: '/api/sign-out',
    summary: 'Ends this session.',
    role: 'nobody',
    mode: 'class',
    reply: done,
    problems: ['store-unavailable'],
  },
  lookAtCode: {
    method: 'POST',
    path: '/api/join/look',
    summary: 'Which class a joining code is of.',
    role: 'nobody',
    mode: 'class',
    body: z.strictObject({ code: joiningCode }),
    reply: z.strictObject({ title: classTitle }),
    problems: ['code-refused', 'too-many-tries', 'store-unavailable'],
  },
  join: {
    method: 'POST',
    path: '/api/join',
    summary: 'Makes a learner in the class of a joining code, and signs in.',
    role: 'nobody',
    mode: 'class',
    body: z.strictObject({ code: joiningCode, ...newAccount }),
    reply: me,
    problems: [
      'code-refused',
      'class-full',
      'name-taken',
      'name-alike',
      'weak-password',
      'too-many-tries',
      'too-busy',
      'store-unavailable',
    ],
  },
  joinClass: {
    method: 'POST',
    path: '/api/join/class',
    summary: 'Joins one more class by its code, as the one who has signed in.',
    role: 'learner',
    mode: 'class',
    body: z.strictObject({ code: joiningCode }),
    reply: me,
    problems: ['code-refused', 'class-full', 'name-alike', 'too-many-tries'],
  },
  sessions: {
    method: 'GET',
    path: '/api/sessions',
    summary: 'Where one is signed in.',
    role: 'learner',
    mode: 'class',
    reply: z.strictObject({ sessions: z.array(session) }),
    problems: [],
  },
  endOtherSessions: {
    method: 'DELETE',
    path: '/api/sessions',
    summary: 'Ends all of one’s own sessions but this one.',
    role: 'learner',
    mode: 'class',
    reply: z.strictObject({ ended: z.number().int().min(0) }),
    problems: [],
  },
  endSession: {
    method: 'DELETE',
    path: '/api/sessions/:session',
    summary: 'Ends one of one’s own sessions.',
    role: 'learner',
    mode: 'class',
    params: z.strictObject({ session: personId }),
    reply: done,
    problems: ['no-such-thing'],
  },
  setPassword: {
    method: 'PUT',
    path: '/api/password',
    summary:
      'Sets one’s own password; who has none yet also chooses the name for signing in. Other sessions end.',
    role: 'learner',
    mode: 'class',
    body: z.strictObject({
      password,
      /** The one so far, where there is one. */
      old: z.string().max(400).optional(),
      /** Wanted where there is none yet. */
      signIn: signInName.optional(),
    }),
    reply: me,
    problems: ['sign-in-refused', 'name-taken', 'weak-password', 'too-many-tries', 'too-busy'],
  },
} as const satisfies Readonly<Record<string, ApiRoute>>;

export type Me = Readonly<z.infer<typeof me>>;
