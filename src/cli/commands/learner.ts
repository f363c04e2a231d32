import { createWriteStream } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Command } from 'commander';
import type { Store } from '../../store/index.ts';
import { counted } from '../counted.ts';
import { helpAfter } from '../help.ts';
import { type Io, UsageError } from '../io.ts';
import type { Running } from '../program.ts';
import { withStore } from '../store-place.ts';

interface Options {
  readonly data?: string;
}

async function known(store: Store, learner: string): Promise<number> {
  const learners = await store.learners();
  const found = learners.find((one) => one.learner === learner);
  if (found) return found.answers;
  if (await store.people.persons.byId(learner)) return 0;
  throw new UsageError(
    `Nothing is kept of ${learner}.`,
    learners.length > 0 ? 'polewise learner list names everyone.' : 'Nothing is kept of anybody.',
  );
}

async function writeExport(store: Store, learner: string, file: string): Promise<void> {
  try {
    // Never over a file that is there.
    await pipeline(Readable.from(store.exportOf(learner)), createWriteStream(file, { flags: 'wx' }));
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'EEXIST') throw new UsageError(`There is a file ${file} already.`, 'Name a new one.');
    if (code === 'ENOENT' || code === 'EACCES' || code === 'EISDIR' || code === 'ENOTDIR')
      throw new UsageError(`${file} can't be written.`, 'Name a file in a folder that is there.');
    throw error;
  }
}

/** So that somebody who signs in can still look after everybody. */
async function checkNotLastAdmin({ people: { persons } }: Store, id: string): Promise<void> {
  if ((await persons.byId(id)) === null || (await persons.changeRole(id, 'learner')) !== 'last-admin') return;
  throw new UsageError(
    'That is the last administrator.',
    'Make somebody else an administrator first (docs/classes.md).',
  );
}

async function confirmed(io: Io, learner: string, answers: number): Promise<boolean> {
  const lost = `${counted(answers, 'answer')} of ${learner}, with all that follows from them, will be gone for good.`;
  if (!io.interactive) throw new UsageError(lost, 'Say --yes when that is what you want.');
  io.out(lost);
  return (await io.question(`Type ${learner} to erase: `))?.trim() === learner;
}

export function addLearner(program: Command, io: Io, _running: Running): void {
  const learner = program
    .command('learner')
    .summary('what is kept about somebody')
    .description('Shows who answers are kept of, gives out everything about one of them, or erases it.');
  const data = '--data <folder>';
  const dataText = 'the data folder (default: the one that serve and drill use)';

  learner
    .command('list')
    .summary('name everyone of whom something is kept')
    .description('Names everyone of whom something is kept, and how many answers that is.')
    .option(data, dataText)
    .addHelpText('after', helpAfter(io, ['polewise learner list']))
    .action(({ data }: Options) =>
      withStore(io, data, async (store) => {
        const learners = await store.learners();
        for (const { learner: id, answers } of learners) {
          const person = await store.people.persons.byId(id);
          io.out(`${person ? `${person.name} (${id})` : id}: ${counted(answers, 'answer')}`);
        }
        if (learners.length === 0) io.out('Nothing is kept of anybody yet.');
      }),
    );

  learner
    .command('export')
    .summary('give out everything about one learner')
    .description('Gives out everything that is kept about one learner, as JSON.')
    .argument('[learner]', 'who; on a machine of your own that is me', 'me')
    .option('--out <file>', 'a new file to write it to, instead of printing it')
    .option(data, dataText)
    .addHelpText(
      'after',
      helpAfter(io, ['polewise learner export --out mine.json', 'polewise learner export me | less']),
    )
    .action((name: string, { data, out }: Options & { readonly out?: string }) =>
      withStore(io, data, async (store) => {
        await known(store, name);
        if (out) {
          await writeExport(store, name, out);
          io.out(`Everything kept about ${name} is in ${out}.`);
        } else for await (const piece of store.exportOf(name)) io.out(piece.trim());
      }),
    );

  learner
    .command('erase')
    .summary('erase everything about one learner')
    .description('Erases everything that is kept about one learner, for good. Backups are not touched.')
    .argument('<learner>', 'who')
    .option('--yes', 'without asking once more')
    .option(data, dataText)
    .addHelpText('after', helpAfter(io, ['polewise learner erase me']))
    .action((name: string, { data, yes }: Options & { readonly yes?: boolean }) =>
      withStore(io, data, async (store) => {
        const answers = await known(store, name);
        if (!yes && !(await confirmed(io, name, answers))) {
          io.out('Nothing was erased.');
          return;
        }
        await checkNotLastAdmin(store, name);
        await store.erase(name);
        io.out(`Everything kept about ${name} is gone: ${counted(answers, 'answer')}.`);
      }),
    );
}
