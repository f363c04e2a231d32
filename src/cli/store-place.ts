import { existsSync, statSync } from 'node:fs';
import {
  failureOf,
  openStore,
  type Store,
  type StoreOptions,
  type StorePlace,
  storeFile,
} from '../store/index.ts';
import type { CommandWords } from '../words/commands.ts';
import { say } from '../words/statement.ts';
import { practiceFile } from './files.ts';
import { type Io, UsageError } from './io.ts';

/** As `pg` takes it: an address, or the folder of a socket. */
const DATABASE = /^(?:postgres(?:ql)?:|socket:|\/)/;

/** Where answers are kept: DATABASE_URL names a PostgreSQL database, otherwise it is a file in a data folder. */
export function storePlace(io: Io, folder: string | undefined): StorePlace {
  const { store: said } = io.words;
  const address = io.environment['DATABASE_URL'];
  if (address && folder) throw new UsageError(said.twoStores.wrong, said.twoStores.right);
  if (address && !DATABASE.test(address))
    // It may have a password in it, so it isn't shown.
    throw new UsageError(said.noAddress.wrong, said.noAddress.right);
  if (address) return { kind: 'database', address };
  if (folder !== undefined && existsSync(folder) && statSync(folder).isFile())
    throw new UsageError(said.dataIsAFile.wrong(folder), said.dataIsAFile.right);
  return { kind: 'file', file: folder ? storeFile(folder) : practiceFile(io, undefined) };
}

/** What the user has to know of a store that fails, in words. */
function storeTrouble(
  thrown: unknown,
  place: StorePlace,
  { kept: { failures }, store: said }: CommandWords,
): unknown {
  const error = thrown instanceof UsageError ? null : failureOf(thrown);
  if (!error) return thrown;
  // The address of a database may have a password in it.
  const where = place.kind === 'file' ? place.file : said.theDatabase;
  const { detail } = error;
  const told = say(failures.wrong, error.said);
  return new UsageError(
    detail ? said.failedWith({ where, told, detail }) : said.failed({ where, told }),
    say(failures.right, error.said),
  );
}

type Use<T> = (store: Store, place: StorePlace) => Promise<T>;

async function using<T>(
  io: Io,
  folder: string | undefined,
  { begins, onAway, now = () => io.now() }: StoreOptions,
  use: Use<T>,
): Promise<T> {
  const place = storePlace(io, folder);
  try {
    const store = await openStore(place, { now, begins: begins ?? true, ...(onAway && { onAway }) });
    try {
      return await use(store, place);
    } finally {
      await store.close();
    }
  } catch (error) {
    throw storeTrouble(error, place, io.words);
  }
}

/** Opens the store that is there for as long as it is used. A place that was mistyped is refused, and stays as it is. */
export const withStore = <T>(io: Io, folder: string | undefined, use: Use<T>): Promise<T> =>
  using(io, folder, { begins: false }, use);

/** The same, for what begins something: where there is no store yet it is made. */
export const withNewStore = <T>(
  io: Io,
  folder: string | undefined,
  use: Use<T>,
  options: Pick<StoreOptions, 'now' | 'onAway'> = {},
): Promise<T> => using(io, folder, { ...options, begins: true }, use);

/** Tells somebody at a terminal how far long work has come, at every tenth. */
export function progressOf(io: Io, what: string): (done: number, total: number) => void {
  let told = 0;
  return (done, total) => {
    const tenths = total > 0 ? Math.floor((done / total) * 10) : 10;
    if (!io.interactive || tenths <= told || tenths === 10) return;
    told = tenths;
    io.err(io.words.progress.percent({ what, percent: tenths * 10 }));
  };
}
