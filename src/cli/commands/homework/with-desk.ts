import type { Desk } from '../../../server/homework/desk.ts';
import type { Asking } from '../../../server/people/gate.ts';
import { ApiFailure } from '../../../server/problems.ts';
import type { Words } from '../../../words/index.ts';
import { coreWordsOf } from '../../core-words.ts';
import { openCourse } from '../../course.ts';
import { type Io, UsageError } from '../../io.ts';
import { withStore } from '../../store-place.ts';
import type { StoreOptions } from './store-options.ts';

/** Whoever may run commands on the store may do everything; this name stands in the record. */
export const AT_THE_TERMINAL: Asking = { id: 'command-line', role: 'admin', session: null };

/** What is refused as a mistake of whoever called, in words; whatever else was thrown as it is. */
export function usageErrorOf(error: unknown, words: Words): unknown {
  if (!(error instanceof ApiFailure)) return error;
  const { message, hint } = error.told(words);
  return new UsageError(message, hint);
}

/** Does something with homework on the store; what is refused is told in words, as any mistake in a command is. */
export async function withDesk<T>(
  io: Io,
  { data, banks }: StoreOptions,
  use: (desk: Desk) => Promise<T>,
): Promise<T> {
  const course = await openCourse(io, banks);
  return withStore(io, data, async (store) => {
    const words = await coreWordsOf(io);
    try {
      return await use({ store, course, words, now: () => io.now() });
    } catch (error) {
      throw usageErrorOf(error, words);
    }
  });
}
