import { ApiFailure, call } from '../../api.ts';
import type { Post } from './send.ts';

/** Refusals after which the same may be taken later. */
const LATER: ReadonlySet<string> = new Set([
  'too-many-tries',
  'too-busy',
  'stopping',
  'store-unavailable',
  'internal-fault',
  'too-slow',
]);

/** Sends answers to the server. One that says nothing for so many milliseconds is as good as no network. */
export const postWithin =
  (patience: number): Post =>
  async (paper, batch) => {
    try {
      const signal = AbortSignal.timeout(patience);
      return {
        kind: 'results',
        results: await call('saveAnswers', { params: { paper }, body: batch, signal }),
      };
    } catch (error) {
      if (!(error instanceof ApiFailure) || error.code === null || LATER.has(error.code))
        return { kind: 'later' };
      if (error.code === 'sign-in-first') return { kind: 'signed-out' };
      return { kind: 'refused', code: error.code, message: error.message };
    }
  };
