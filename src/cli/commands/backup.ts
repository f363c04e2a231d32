import { failureOf } from '../../store/index.ts';
import type { CommandWords } from '../../words/commands.ts';
import { say } from '../../words/statement.ts';
import { type Io, UsageError } from '../io.ts';
import { progressOf, withStore } from '../store-place.ts';
import { whenStopped } from '../until-stopped.ts';

export interface BackupOptions {
  readonly data?: string;
}

/** What went wrong with the file that is made; the store it is made of is open and well. */
function targetTrouble(
  thrown: unknown,
  file: string,
  { backup: said, files, kept: { failures } }: CommandWords,
): unknown {
  const failure = failureOf(thrown);
  if (!failure) return thrown;
  switch (failure.code) {
    case 'store-busy':
      return thrown;
    case 'store-full':
      return new UsageError(said.noRoom.wrong(file), said.noRoom.right);
    case 'store-unreachable':
    case 'store-read-only':
      return new UsageError(
        files.mayNotBeWritten.wrong({ file, why: failure.detail || say(failures.wrong, failure.said) }),
        said.mayNotBeWritten,
      );
    default:
      return new UsageError(say(failures.wrong, failure.said), say(failures.right, failure.said));
  }
}

/** Copies the store into a new file. */
export async function backUp(file: string, { data }: BackupOptions, io: Io): Promise<void> {
  const { backup: said, progress } = io.words;
  if (io.environment['DATABASE_URL'])
    throw new UsageError(said.ownTools, 'pg_dump --format=custom --file=polewise.dump "$DATABASE_URL"');
  const stopped = new AbortController();
  const asBefore = whenStopped(() => stopped.abort());
  try {
    await withStore(io, data, async (store) => {
      try {
        await store.backup(file, progressOf(io, progress.copied), stopped.signal);
      } catch (error) {
        if (stopped.signal.aborted) throw new UsageError(said.stopped.wrong, said.stopped.right);
        throw targetTrouble(error, file, io.words);
      }
    });
  } finally {
    asBefore();
  }
  io.out(said.done(file));
}
