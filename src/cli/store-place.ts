import { failureOf, openStore, type Store, type StorePlace, storeFile } from '../store/index.ts';
import { practiceFile } from './files.ts';
import { type Io, UsageError } from './io.ts';

/** Where answers are kept: DATABASE_URL names a PostgreSQL database, otherwise it is a file in a data folder. */
export function storePlace(io: Io, folder: string | undefined): StorePlace {
  const address = io.environment['DATABASE_URL'];
  if (address && folder)
    throw new UsageError(
      'DATABASE_URL and --data name two different stores.',
      'Leave out --data, or run it with DATABASE_URL empty.',
    );
  if (address) return { kind: 'database', address };
  return { kind: 'file', file: folder ? storeFile(folder) : practiceFile(io, undefined) };
}

/** What the user has to know of a store that fails, in words. */
function storeTrouble(thrown: unknown, place: StorePlace): unknown {
  const error = thrown instanceof UsageError ? null : failureOf(thrown);
  if (!error) return thrown;
  // The address of a database may have a password in it.
  const where = place.kind === 'file' ? place.file : 'the database of DATABASE_URL';
  const detail = error.detail ? ` (${error.detail})` : '';
  return new UsageError(`${where}: ${error.message}${detail}`, error.hint);
}

/** Opens the store for as long as it is used. */
export async function withStore<T>(
  io: Io,
  folder: string | undefined,
  use: (store: Store, place: StorePlace) => Promise<T>,
): Promise<T> {
  const place = storePlace(io, folder);
  try {
    const store = await openStore(place, { now: () => io.now() });
    try {
      return await use(store, place);
    } finally {
      await store.close();
    }
  } catch (error) {
    throw storeTrouble(error, place);
  }
}

/** Tells somebody at a terminal how far long work has come, at every tenth. */
export function progressOf(io: Io, what: string): (done: number, total: number) => void {
  let told = 0;
  return (done, total) => {
    const tenths = total > 0 ? Math.floor((done / total) * 10) : 10;
    if (!io.interactive || tenths <= told || tenths === 10) return;
    told = tenths;
    io.err(`${what}: ${tenths * 10} %`);
  };
}
