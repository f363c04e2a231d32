import { join } from 'node:path';
import type { CommandWords } from '../words/commands.ts';
import { type Io, UsageError } from './io.ts';
import { textOf } from './utf8.ts';

/** A file may have so many bytes: the largest that is asked for, a roster, has some hundred kilobytes. */
export const MOST_BYTES = 64 * 1024 * 1024;

/** What is wrong with a file that the system doesn't give; undefined for what nobody expects. */
function troubleWith(
  { files }: CommandWords,
  code: string | undefined,
  file: string,
  wanted: string,
): UsageError | undefined {
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return new UsageError(files.noFile(file), wanted);
    case 'EISDIR':
      return new UsageError(files.isAFolder.wrong(file), files.isAFolder.right);
    case 'EACCES':
      return new UsageError(files.mayNotBeRead.wrong(file), files.mayNotBeRead.right);
    case 'EFBIG':
      return new UsageError(
        files.tooLarge.wrong({ file, megabytes: MOST_BYTES / 1024 / 1024 }),
        files.tooLarge.right,
      );
    default:
      return undefined;
  }
}

/** The text of a file the user named; `-` is standard input. `wanted` says what would be right where there is none. */
export async function readGiven(io: Io, file: string, wanted = io.words.files.wanted): Promise<string> {
  const { files } = io.words;
  /** What it is called when it is told of. */
  const called = file === '-' ? files.standardInput : file;
  let bytes: Uint8Array;
  try {
    bytes = await io.read(file);
  } catch (error) {
    throw troubleWith(io.words, (error as NodeJS.ErrnoException).code, called, wanted) ?? error;
  }
  const text = textOf(bytes);
  if (typeof text === 'string') return text;
  throw new UsageError(
    files.notUtf8.wrong({ file: called, line: text.line, column: text.column }),
    files.notUtf8.right[text.looksLike],
  );
}

/** Where practice is kept unless --data says otherwise: POLEWISE_DATA, or the user's data folder. */
export function practiceFile(io: Io, given: string | undefined): string {
  const { environment, home } = io;
  if (given) return given;
  if (environment['POLEWISE_DATA']) return join(environment['POLEWISE_DATA'], 'practice.sqlite');
  return join(environment['XDG_DATA_HOME'] || join(home, '.local', 'share'), 'polewise', 'practice.sqlite');
}
