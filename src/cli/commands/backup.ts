import type { Command } from 'commander';
import { failureOf } from '../../store/index.ts';
import { helpAfter } from '../help.ts';
import { type Io, UsageError } from '../io.ts';
import type { Running } from '../program.ts';
import { progressOf, withStore } from '../store-place.ts';
import { whenStopped } from '../until-stopped.ts';

const LEFT = 'Nothing of it is left; the store is as it was.';

interface Options {
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

export function addBackup(program: Command, io: Io, _running: Running): void {
  program
    .command('backup')
    .summary('copy everything that is kept into one file')
    .description('Copies the store into one new file, also while the server or a drill is using it.')
    .argument('<file>', 'the file to make; it must not be there yet')
    .option('--data <folder>', 'the data folder (default: the one that serve and drill use)')
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise backup polewise-monday.sqlite',
          'polewise backup /media/stick/polewise.sqlite --data /srv/polewise',
        ],
        'To put a backup back: stop the server, and copy the file over practice.sqlite in the data folder (docs/backup.md).',
      ),
    )
    .action(async (file: string, { data }: Options) => {
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
    });
}
