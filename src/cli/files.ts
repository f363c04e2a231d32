import { join } from 'node:path';
import { type Io, UsageError } from './io.ts';

/** The text of a file the user named. */
export function readGiven(io: Io, file: string): string {
  try {
    return io.readText(file);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT')
      throw new UsageError(`There is no file ${file}.`, 'Give the path of a file, or - for standard input.');
    if (code === 'EISDIR') throw new UsageError(`${file} is a folder.`, 'Give the path of a file in it.');
    if (code === 'EACCES') throw new UsageError(`${file} can't be read.`, 'Check who may read it.');
    throw error;
  }
}

/** Where practice is kept unless --data says otherwise: POLEWISE_DATA, or the user's data folder. */
export function practiceFile(io: Io, given: string | undefined): string {
  const { environment, home } = io;
  if (given) return given;
  if (environment['POLEWISE_DATA']) return join(environment['POLEWISE_DATA'], 'practice.sqlite');
  return join(environment['XDG_DATA_HOME'] || join(home, '.local', 'share'), 'polewise', 'practice.sqlite');
}
