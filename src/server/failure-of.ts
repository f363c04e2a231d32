import type { FastifyError } from 'fastify';
import type { ApiProblem } from '../../shared/api.ts';
import { failureOf, NoSuchPerson } from '../store/index.ts';
import type { Words } from '../words/index.ts';
import type { Gate } from './people/gate.ts';
import { ApiFailure } from './problems.ts';
import { JobEnded } from './work/work.ts';

function refusalOf(code: string, statusCode: number): ApiFailure | null {
  switch (code) {
    case 'FST_ERR_CTP_BODY_TOO_LARGE':
      return new ApiFailure({ says: 'body-too-large' });
    case 'FST_ERR_CTP_INVALID_MEDIA_TYPE':
      return new ApiFailure({ says: 'wrong-media-type' });
    case 'FST_ERR_CTP_EMPTY_JSON_BODY':
      return new ApiFailure({ says: 'bad-json.empty' });
    case 'FST_ERR_CTP_INVALID_JSON_BODY':
      return new ApiFailure({ says: 'bad-json' });
    case 'FST_ERR_BAD_URL':
    case 'FST_ERR_INVALID_URL':
    case 'FST_ERR_MAX_PARAM_LENGTH':
      return new ApiFailure({ says: 'bad-request.address' });
    case 'FST_ERR_CTP_INVALID_CONTENT_LENGTH':
      return new ApiFailure({ says: 'bad-request.length' });
  }
  if (statusCode < 400 || statusCode > 499) return null;
  return new ApiFailure({ says: 'bad-request' });
}

/** What to tell the client of anything that was thrown; a fault of the program tells nothing of itself. */
export function apiFailureOf(error: unknown): ApiFailure {
  if (error instanceof ApiFailure) return error;
  const store = failureOf(error);
  if (store) return new ApiFailure({ says: 'store-unavailable', failure: store.said });
  // Erased after the session was looked up.
  if (error instanceof NoSuchPerson) return new ApiFailure({ says: 'sign-in-first' });
  if (error instanceof JobEnded && error.why === 'closing') return new ApiFailure({ says: 'stopping' });
  const { code = '', statusCode = 500 } = error as Partial<FastifyError>;
  return refusalOf(code, statusCode) ?? new ApiFailure({ says: 'internal-fault' });
}

/**
 * A failure as it is told: where people sign in, those who are told of the database can't do anything about it, and are told what
 * they can do. What would help is in the log.
 */
export function problemTold(mode: Gate['mode'], failure: ApiFailure, words: Words): ApiProblem {
  const told = failure.told(words);
  if (mode === 'solo' || failure.code !== 'store-unavailable') return told;
  const { storeAway } = words.server.troubles;
  return { ...told, message: storeAway.wrong(told.message), hint: storeAway.right };
}
