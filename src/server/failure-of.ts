import type { FastifyError } from 'fastify';
import type { z } from 'zod';
import { failureOf, NoSuchPerson } from '../store/index.ts';
import type { ServerWords } from '../words/server.ts';
import { say } from '../words/statement.ts';
import type { Gate } from './people/gate.ts';
import { ApiFailure } from './problems.ts';
import { JobEnded } from './work/work.ts';

const LONGEST_MESSAGE = 300;

const shortened = (text: string): string =>
  text.length > LONGEST_MESSAGE ? `${text.slice(0, LONGEST_MESSAGE)}…` : text;

/** The first thing that is wrong with a value, with its place in it. */
export function issueText(issue: z.core.$ZodIssue | undefined): string {
  const place = issue?.path.map(String).join('.') || 'the top';
  return shortened(`At ${place}: ${issue?.message ?? 'not of the form wanted'}.`);
}

const JSON_HINT = 'Send one JSON value, as docs/api.md shows, with content-type application/json.';

function refusalOf(code: string, statusCode: number, message: string): ApiFailure | null {
  switch (code) {
    case 'FST_ERR_CTP_BODY_TOO_LARGE':
      return new ApiFailure(
        'body-too-large',
        'The body is larger than this route takes.',
        'Send fewer answers at a time.',
      );
    case 'FST_ERR_CTP_INVALID_MEDIA_TYPE':
      return new ApiFailure('wrong-media-type', 'Only JSON is read here.', JSON_HINT);
    case 'FST_ERR_CTP_EMPTY_JSON_BODY':
      return new ApiFailure('bad-json', 'The body is empty.', JSON_HINT);
    case 'FST_ERR_CTP_INVALID_JSON_BODY':
      return new ApiFailure('bad-json', 'The body is not JSON.', JSON_HINT);
  }
  if (statusCode < 400 || statusCode > 499) return null;
  return new ApiFailure('bad-request', shortened(message), 'See docs/api.md for what can be asked.');
}

/** What to tell the client of anything that was thrown; a fault of the program tells nothing of itself. */
export function apiFailureOf(error: unknown, { store: { failures } }: ServerWords): ApiFailure {
  if (error instanceof ApiFailure) return error;
  const store = failureOf(error);
  if (store)
    return new ApiFailure(
      'store-unavailable',
      say(failures.wrong, store.said),
      say(failures.right, store.said),
    );
  // Erased after the session was looked up.
  if (error instanceof NoSuchPerson)
    return new ApiFailure('sign-in-first', 'Nobody has signed in.', 'Sign in, then ask again.');
  if (error instanceof JobEnded && error.why === 'closing')
    return new ApiFailure(
      'stopping',
      'The server is being stopped.',
      'Send it again when it has been started.',
    );
  const { code = '', statusCode = 500, message = '' } = error as Partial<FastifyError>;
  // JSON.parse's own error comes without a code of the framework.
  if (error instanceof SyntaxError && statusCode === 400)
    return new ApiFailure('bad-json', `The body is not JSON: ${shortened(message)}.`, JSON_HINT);
  return (
    refusalOf(code, statusCode, message) ??
    new ApiFailure(
      'internal-fault',
      'A fault in the server itself.',
      'Nothing that was acknowledged is lost. Please report it with what you did; the log says more.',
    )
  );
}

/**
 * A failure as it is told: where people sign in, those who are told of the database can't do anything about it, and are told what
 * they can do. What would help is in the log.
 */
export const toldTo = (
  mode: Gate['mode'],
  failure: ApiFailure,
  { troubles: { storeAway } }: ServerWords,
): ApiFailure =>
  mode === 'solo' || failure.code !== 'store-unavailable'
    ? failure
    : new ApiFailure(
        'store-unavailable',
        storeAway.wrong(failure.message),
        storeAway.right,
        failure.retryAfter,
      );
