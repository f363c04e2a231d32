import { join } from 'node:path';
import { type Io, UsageError } from './io.ts';
import { textOf } from './utf8.ts';

/** A file may have so many bytes: the largest that is asked for, a roster, has some hundred kilobytes. */
export const MOST_BYTES = 64 * 1024 * 1024;

/** What a file is called when it is told of. */
const called = (file: string): string => (file === '-' ? 'standard input' : file);

/** What to do about a file that can't be read. */
type Trouble = (file: string, wanted: string) => readonly [message: string, hint: string];
const TROUBLES: Readonly<Record<string, Trouble>> = {
  ENOENT: (file, wanted) => [`There is no file ${file}.`, wanted],
  ENOTDIR: (file, wanted) => [`There is no file ${file}.`, wanted],
  EISDIR: (file) => [`${file} is a folder.`, 'Give the path of a file in it.'],
  EACCES: (file) => [`${file} can't be read.`, 'Check who may read it.'],
  EFBIG: (file) => [`${file} is larger than ${MOST_BYTES / 1024 / 1024} MB.`, 'Give a file of text.'],
};

const REMEDIES = {
  'UTF-16': 'It looks like UTF-16. Save it as UTF-8; a spreadsheet calls that CSV UTF-8.',
  'another encoding':
    'It may be from an older program. Save it as UTF-8; a spreadsheet calls that CSV UTF-8.',
  'no text': 'It is no text. Give a file of text, in UTF-8.',
} as const;

/** The text of a file the user named; `-` is standard input. `wanted` says what would be right where there is none. */
export async function readGiven(
  io: Io,
  file: string,
  wanted = 'Give the path of a file, or - for standard input.',
): Promise<string> {
  let bytes: Uint8Array;
  try {
    bytes = await io.read(file);
  } catch (error) {
    const trouble = TROUBLES[(error as NodeJS.ErrnoException).code ?? ''];
    if (!trouble) throw error;
    const [message, hint] = trouble(called(file), wanted);
    throw new UsageError(message, hint);
  }
  const text = textOf(bytes);
  if (typeof text === 'string') return text;
  throw new UsageError(
    `${called(file)}:${text.line}:${text.column}: a character here is not UTF-8.`,
    REMEDIES[text.looksLike],
  );
}

/** Where practice is kept unless --data says otherwise: POLEWISE_DATA, or the user's data folder. */
export function practiceFile(io: Io, given: string | undefined): string {
  const { environment, home } = io;
  if (given) return given;
  if (environment['POLEWISE_DATA']) return join(environment['POLEWISE_DATA'], 'practice.sqlite');
  return join(environment['XDG_DATA_HOME'] || join(home, '.local', 'share'), 'polewise', 'practice.sqlite');
}
