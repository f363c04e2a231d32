/** The ways in which a request is refused. docs/api.md has each with its status and meaning. */
import { z } from 'zod';

/** Why a request, or one answer in it, was refused. None is ever used again for something else. */
export const apiProblemCode = z.enum([
  'body-too-large',
  'bad-json',
  'bad-request',
  'headers-too-large',
  'too-slow',
  'bad-value',
  'wrong-media-type',
  'no-such-route',
  'no-such-thing',
  'wrong-method',
  'foreign-host',
  'foreign-site',
  'not-secure',
  'sign-in-first',
  'not-yours',
  'sign-in-refused',
  'link-refused',
  'code-refused',
  'first-run-refused',
  'name-taken',
  'name-alike',
  'weak-password',
  'last-admin',
  'class-full',
  'too-many-tries',
  'bad-answer',
  'answer-too-large',
  'foreign-learner',
  'on-open-paper',
  'not-confirmed',
  'bad-set',
  'already-issued',
  'not-issued',
  'not-prepared',
  'not-open',
  'closed',
  'submitted',
  'withdrawn',
  'no-attempts-left',
  'too-few-circuits',
  'no-hints',
  'no-review',
  'not-handed-in',
  'bad-mark',
  'marked-meanwhile',
  'no-such-code',
  'page-not-built',
  'too-busy',
  'stopping',
  'store-unavailable',
  'internal-fault',
]);

/** What was wrong, in words, and what would be right. */
export const apiProblem = z.strictObject({ code: apiProblemCode, message: z.string(), hint: z.string() });

/** Problems that any route may answer with. */
export const commonProblems = [
  'body-too-large',
  'bad-json',
  'bad-request',
  'headers-too-large',
  'too-slow',
  'bad-value',
  'wrong-media-type',
  'no-such-route',
  'wrong-method',
  'foreign-host',
  'foreign-site',
  'not-secure',
  'stopping',
  'internal-fault',
] as const satisfies readonly ApiProblemCode[];

/** Problems of any route beside those, where people sign in: by the role that it asks for. */
export const roleProblems = {
  nobody: [],
  learner: ['sign-in-first', 'store-unavailable'],
  tutor: ['sign-in-first', 'not-yours', 'store-unavailable'],
  admin: ['sign-in-first', 'not-yours', 'store-unavailable'],
} as const satisfies Readonly<Record<string, readonly ApiProblemCode[]>>;

export type ApiProblemCode = z.infer<typeof apiProblemCode>;
export type ApiProblem = Readonly<z.infer<typeof apiProblem>>;
