import { createWriteStream } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Store } from '../../store/index.ts';
import { counted } from '../counted.ts';
import { type Io, UsageError } from '../io.ts';
import { withStore } from '../store-place.ts';

export interface LearnerOptions {
  readonly data?: string;
}
export interface ExportOptions extends LearnerOptions {
  readonly out?: string;
}
export interface EraseOptions extends LearnerOptions {
  readonly yes?: boolean;
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

/** Names everyone of whom something is kept. */
export const listLearners = ({ data }: LearnerOptions, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    const learners = await store.learners();
    for (const { learner: id, answers } of learners) {
      const person = await store.people.persons.byId(id);
      io.out(`${person ? `${person.name} (${id})` : id}: ${counted(answers, 'answer')}`);
    }
    if (learners.length === 0) io.out('Nothing is kept of anybody yet.');
  });

/** Gives out everything about one learner. */
export const exportLearner = (name: string, { data, out }: ExportOptions, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    await known(store, name);
    if (out) {
      await writeExport(store, name, out);
      io.out(`Everything kept about ${name} is in ${out}.`);
    } else for await (const piece of store.exportOf(name)) io.out(piece.trim());
  });

/** Erases everything about one learner, once it is sure that this is wanted. */
export const eraseLearner = (name: string, { data, yes }: EraseOptions, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    const answers = await known(store, name);
    if (!yes && !(await confirmed(io, name, answers))) {
      io.out('Nothing was erased.');
      return;
    }
    await checkNotLastAdmin(store, name);
    await store.erase(name);
    io.out(`Everything kept about ${name} is gone: ${counted(answers, 'answer')}.`);
  });
