import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { nanoid } from 'nanoid';
import { StoreFailure } from './failures.ts';
import { TEMPORARY_TABLES } from './schema.ts';
import type { Progress } from './types.ts';

/** Pages of 4 KiB copied before others get a turn. */
const PAGES = 2000;

function flush(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

async function copyTo(
  part: string,
  source: string,
  progress: Progress | undefined,
  signal: AbortSignal | undefined,
): Promise<void> {
  // A connection of its own that holds one state of the database from beginning to end: without that, the copying
  // would start anew whenever another program writes.
  const reader = new Database(source, { fileMustExist: true, timeout: 5000 });
  try {
    reader.exec('BEGIN');
    reader.prepare('select count(*) from histories').get();
    await reader.backup(part, {
      progress: ({ totalPages, remainingPages }) => {
        signal?.throwIfAborted();
        progress?.(totalPages - remainingPages, totalPages);
        return PAGES;
      },
    });
    reader.exec('COMMIT');
  } finally {
    reader.close();
  }
}

/**
 * Checks the copy, and gives its histories new names: when it is put back, devices see that and send what it lacks. Who
 * was signed in has to sign in again.
 */
function finishCopy(part: string): void {
  const copy = new Database(part, { fileMustExist: true });
  try {
    // A copy is one file; its journal comes back when it is opened as a store.
    copy.pragma('journal_mode = DELETE');
    copy.pragma('secure_delete = ON');
    const [result] = copy.pragma('quick_check') as { quick_check: string }[];
    if (result?.quick_check !== 'ok')
      throw new StoreFailure('store-damaged', {
        says: 'copyDamaged',
        found: String(result?.quick_check),
      });
    const rename = copy.prepare('update histories set history = ? where learner = ?');
    const learners = copy.prepare('select learner from histories').pluck().all();
    copy.transaction(() => {
      for (const learner of learners) rename.run(nanoid(), learner);
      for (const table of TEMPORARY_TABLES) copy.exec(`delete from ${table}`);
    })();
  } finally {
    copy.close();
  }
}

/**
 * Copies a database that is being written into `file`, which must not be there yet. It is written beside its place,
 * checked, and put in place when it is whole, so that a file of that name always is a good copy.
 */
export async function backupSqlite(
  source: string,
  file: string,
  progress?: Progress,
  signal?: AbortSignal,
): Promise<void> {
  if (existsSync(file)) throw new StoreFailure('file-exists', { says: 'fileExists', file });
  if (!existsSync(dirname(file)))
    throw new StoreFailure('no-such-folder', { says: 'noSuchFolder', folder: dirname(file) });
  const part = `${file}.part`;
  rmSync(part, { force: true });
  try {
    await copyTo(part, source, progress, signal);
    signal?.throwIfAborted();
    finishCopy(part);
    flush(part);
    renameSync(part, file);
    flush(dirname(file));
  } finally {
    for (const left of [part, `${part}-journal`]) rmSync(left, { force: true });
  }
}
