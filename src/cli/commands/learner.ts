import { createWriteStream } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { Store } from '../../store/index.ts';
import type { CommandWords } from '../../words/commands.ts';
import { coreWordsOf } from '../core-words.ts';
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

async function known(store: Store, learner: string, { learner: said }: CommandWords): Promise<number> {
  const learners = await store.learners();
  const found = learners.find((one) => one.learner === learner);
  if (found) return found.answers;
  if (await store.people.persons.byId(learner)) return 0;
  throw new UsageError(
    said.nothingOf.wrong(learner),
    learners.length > 0 ? said.nothingOf.right : said.nothingOf.rightWhereNobody,
  );
}

async function writeExport(store: Store, learner: string, file: string, io: Io): Promise<void> {
  const { learner: said } = io.words;
  try {
    // Never over a file that is there.
    await pipeline(
      Readable.from(store.exportOf(learner, await coreWordsOf(io))),
      createWriteStream(file, { flags: 'wx' }),
    );
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'EEXIST') throw new UsageError(said.fileThere.wrong(file), said.fileThere.right);
    if (code === 'ENOENT' || code === 'EACCES' || code === 'EISDIR' || code === 'ENOTDIR')
      throw new UsageError(said.notWritten.wrong(file), said.notWritten.right);
    throw error;
  }
}

/** So that somebody who signs in can still look after everybody. */
async function checkNotLastAdmin(
  { people: { persons } }: Store,
  id: string,
  { learner: said }: CommandWords,
): Promise<void> {
  if ((await persons.byId(id)) === null || (await persons.changeRole(id, 'learner')) !== 'last-admin') return;
  throw new UsageError(said.lastAdministrator.wrong, said.lastAdministrator.right);
}

async function confirmed(io: Io, learner: string, answers: number): Promise<boolean> {
  const { learner: said } = io.words;
  const lost = said.willBeGone({ count: answers, name: learner });
  if (!io.interactive) throw new UsageError(lost, said.sayYes);
  io.out(lost);
  return (await io.question(said.typeToErase(learner)))?.trim() === learner;
}

/** Names everyone of whom something is kept. */
export const listLearners = ({ data }: LearnerOptions, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    const { learner: said } = io.words;
    const learners = await store.learners();
    for (const { learner: id, answers } of learners) {
      const person = await store.people.persons.byId(id);
      const name = person ? said.nameWithId({ name: person.name, id }) : id;
      io.out(said.row({ name, count: answers }));
    }
    if (learners.length === 0) io.out(said.nobodyYet);
  });

/** Gives out everything about one learner. */
export const exportLearner = (name: string, { data, out }: ExportOptions, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    await known(store, name, io.words);
    if (out) {
      await writeExport(store, name, out, io);
      io.out(io.words.learner.exported({ name, file: out }));
    } else for await (const piece of store.exportOf(name, await coreWordsOf(io))) io.out(piece.trim());
  });

/** Erases everything about one learner, once it is sure that this is wanted. */
export const eraseLearner = (name: string, { data, yes }: EraseOptions, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    const { learner: said } = io.words;
    const answers = await known(store, name, io.words);
    if (!yes && !(await confirmed(io, name, answers))) {
      io.out(said.nothingErased);
      return;
    }
    await checkNotLastAdmin(store, name, io.words);
    await store.erase(name);
    io.out(said.erased({ name, count: answers }));
  });
