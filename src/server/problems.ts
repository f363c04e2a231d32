/** The ways in which the server refuses: one table, which docs/api.md prints; a test holds them equal. */
import type { ApiProblem, ApiProblemCode } from '../../shared/api.ts';
import type { Problem, ToldProblem } from '../../shared/problem.ts';
import type { Refusal, Words } from '../words/index.ts';
import { codeOf, tellProblems, tellSaid } from '../words/problems.ts';

export interface ProblemRow {
  /** HTTP status; null for problems that only one answer in a batch has. */
  readonly status: number | null;
  readonly meaning: string;
}

const row = (status: number | null, meaning: string): ProblemRow => ({ status, meaning });

export const API_PROBLEMS: Readonly<Record<ApiProblemCode, ProblemRow>> = {
  'bad-request': row(400, 'What came is not HTTP, or its address can not be read.'),
  'bad-json': row(400, 'The body is not JSON, is empty, or names a forbidden key.'),
  'bad-value': row(400, 'The body or the query is not of the form that the route takes.'),
  'not-confirmed': row(400, 'Erasing was not confirmed by naming the learner.'),
  'bad-set': row(400, 'A set can not be made or issued as it is wished.'),
  'bad-mark': row(400, 'Marks that an item can not have, or for an item that is not there.'),
  'weak-password': row(400, 'The password is a common one, or is made of the name for signing in.'),
  'sign-in-first': row(401, 'Nobody has signed in, or the session has ended.'),
  'sign-in-refused': row(403, 'The name or the password is wrong.'),
  'link-refused': row(403, 'The link is unknown, used, replaced or too old.'),
  'first-run-refused': row(403, 'The key is wrong, or there is an administrator already.'),
  'not-yours': row(403, 'Somebody with another role may do this.'),
  'not-secure': row(403, 'Passwords would cross the network in the clear.'),
  'foreign-host': row(403, 'The request is for another host name than those this server has.'),
  'foreign-site': row(403, 'The request comes from a page of another site.'),
  'no-such-route': row(404, 'There is nothing at this address.'),
  'no-such-thing': row(404, 'There is no such thing, or it belongs to others.'),
  'code-refused': row(404, 'The joining code is of no class that may be joined.'),
  'no-such-code': row(404, 'No paper of the set has this code.'),
  'wrong-method': row(405, 'The address is right and the method is not.'),
  'too-slow': row(408, 'The request did not arrive within half a minute.'),
  'name-taken': row(409, 'Somebody else signs in with this name.'),
  'name-alike': row(409, 'Somebody in the class has a name that looks like this one.'),
  'last-admin': row(409, 'There would be no administrator left.'),
  'class-full': row(409, 'The class would have more than 1,000 learners.'),
  'already-issued': row(409, 'The set was issued: learners count on it as it is.'),
  'not-issued': row(409, 'The set was not issued yet, or was withdrawn.'),
  'not-prepared': row(409, 'There are learners whose papers have not been made yet.'),
  'not-open': row(409, 'The set has not opened yet.'),
  closed: row(409, 'The set has closed; what was saved before counts.'),
  submitted: row(409, 'The paper was handed in.'),
  withdrawn: row(409, 'The set was withdrawn by its tutor.'),
  'no-attempts-left': row(409, 'All attempts at the set have been handed in.'),
  'too-few-circuits': row(409, 'No circuits are left for a place that nobody has yet.'),
  'no-hints': row(409, 'The set allows no hints.'),
  'marked-meanwhile': row(409, 'Somebody else has given the item other marks since they were looked at.'),
  'no-review': row(409, 'The paper may not be looked through, or not yet.'),
  'not-handed-in': row(409, 'Nothing was handed in, so there is nothing to mark.'),
  'body-too-large': row(413, 'The body is larger than the route takes.'),
  'wrong-media-type': row(415, 'The body is not sent as application/json.'),
  'too-many-tries': row(429, 'Too many tries; Retry-After says when the next one is taken.'),
  'headers-too-large': row(431, 'The headers are larger than 16 KiB.'),
  'internal-fault': row(500, 'A fault of the program itself; the log says more.'),
  'page-not-built': row(503, 'The page has not been built.'),
  'store-unavailable': row(503, 'The database does not answer, is full, or may not be written.'),
  'too-busy': row(503, 'More waits to be done than can be held.'),
  stopping: row(503, 'The server is being stopped.'),
  'bad-answer': row(null, 'An answer is not of the form of shared/practice.ts, or contradicts itself.'),
  'answer-too-large': row(null, 'An answer has more than 10,000 values or 262,144 letters.'),
  'on-open-paper': row(null, 'The circuit is on an own paper that is open: it is not marked before hand-in.'),
  'foreign-learner': row(null, 'An answer names another learner than the one who sends it.'),
};

/** What made a set, a paper or a mark found wrong with it. All of it at once: who mends one after the other is told of each. */
interface FoundWrong {
  readonly says: 'bad-set' | 'bad-mark' | 'no-such-code' | 'too-few-circuits';
  readonly problems: readonly Problem[];
}

/** A refusal on its way to the client. Thrown by handlers and hooks; whatever else they throw is a fault. */
export class ApiFailure extends Error {
  readonly code: ApiProblemCode;
  /** Why, as data: told where it is sent, in the language of whoever asks. */
  readonly why: Refusal | FoundWrong;
  /** Seconds until it is worth trying again; null where that isn't known. */
  readonly retryAfter: number | null;

  constructor(why: Refusal | FoundWrong, retryAfter: number | null = null) {
    super(why.says);
    this.code = codeOf(why.says) as ApiProblemCode;
    this.why = why;
    this.retryAfter = retryAfter;
  }

  get status(): number {
    return API_PROBLEMS[this.code].status ?? 400;
  }

  told(words: Pick<Words, 'server' | 'problems'>): ApiProblem {
    const { code, why } = this;
    if (!('problems' in why)) {
      const { wrong, right } = tellSaid(words.server.refusals, why);
      return { code, message: wrong, hint: right };
    }
    const problems = tellProblems(words, why.problems);
    const each = (pick: (problem: ToldProblem) => string): string =>
      [...new Set(problems.map(pick))].join(' ');
    return { code, message: each(({ message }) => message), hint: each(({ hint }) => hint) };
  }
}

/** What isn't there, and what isn't for the one who asks, look alike: so an id that was guessed tells nothing. */
export const noSuchThing = (): ApiFailure => new ApiFailure({ says: 'no-such-thing' });
