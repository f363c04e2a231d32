import { failureOf } from '../../store/index.ts';
import { type Io, UsageError } from '../io.ts';
import { progressOf, withStore } from '../store-place.ts';
import { whenStopped } from '../until-stopped.ts';

const LEFT = 'Nothing of it is left; the store is as it was.';

export interface BackupOptions {
  readonly data?: string;
}

/** What went wrong with the file that is made; the store it is made of is open and well. */
function targetTrouble(thrown: unknown, file: string): unknown {
  const failure = failureOf(thrown);
  if (!failure) return thrown;
  switch (failure.code) {
    case 'store-busy':
      return thrown;
    case 'store-full':
      return new UsageError(
        `There is no room for ${file}.`,
        'Make room, or name a file on another disk. The store itself is unharmed.',
      );
    case 'store-unreachable':
    case 'store-read-only':
      return new UsageError(
        `${file} can't be written (${failure.detail || failure.message}).`,
        'Name a file in a folder that you may write to.',
      );
    default:
      return new UsageError(failure.message, failure.hint);
  }
}

/** Copies the store into a new file. */
export async function backUp(file: string, { data }: BackupOptions, io: Io): Promise<void> {
  if (io.environment['DATABASE_URL'])
    throw new UsageError(
      'A PostgreSQL store is backed up with its own tools.',
      'pg_dump --format=custom --file=polewise.dump "$DATABASE_URL"',
    );
  const stopped = new AbortController();
  const asBefore = whenStopped(() => stopped.abort());
  try {
    await withStore(io, data, async (store) => {
      try {
        await store.backup(file, progressOf(io, 'Copied'), stopped.signal);
      } catch (error) {
        if (stopped.signal.aborted) throw new UsageError('The copying was stopped.', LEFT);
        throw targetTrouble(error, file);
      }
    });
  } finally {
    asBefore();
  }
  io.out(`Everything is in ${file}.`);
}
