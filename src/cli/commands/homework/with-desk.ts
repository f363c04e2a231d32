import type { Desk } from '../../../server/homework/desk.ts';
import type { Asking } from '../../../server/people/gate.ts';
import { ApiFailure } from '../../../server/problems.ts';
import { coreWordsOf } from '../../core-words.ts';
import { openCourse } from '../../course.ts';
import { type Io, UsageError } from '../../io.ts';
import { withStore } from '../../store-place.ts';
import type { StoreOptions } from './store-options.ts';

/** Whoever may run commands on the store may do everything; this name stands in the record. */
export const AT_THE_TERMINAL: Asking = { id: 'command-line', role: 'admin', session: null };

/** Does something with homework on the store; what is refused is told in words, as any mistake in a command is. */
export async function withDesk<T>(
  io: Io,
  { data, banks }: StoreOptions,
  use: (desk: Desk) => Promise<T>,
): Promise<T> {
  const course = await openCourse(io, banks);
  return withStore(io, data, async (store) => {
    try {
      return await use({ store, course, words: await coreWordsOf(io), now: () => io.now() });
    } catch (error) {
      throw error instanceof ApiFailure ? new UsageError(error.message, error.hint) : error;
    }
  });
}
