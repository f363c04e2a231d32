import { type Io, UsageError } from './io.ts';

/** Writes a file that was named in the command; `right` is what would help where it can't be written. */
export function writeFile(
  io: Io,
  file: string,
  content: string | Uint8Array,
  right = io.words.files.mayNotBeWritten.right,
): void {
  try {
    io.writeFile(file, content);
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code ?? String(error);
    throw new UsageError(io.words.files.mayNotBeWritten.wrong({ file, why }), right);
  }
}

/** Writes one, and says so. */
export function writeNamed(io: Io, file: string, content: string | Uint8Array): void {
  writeFile(io, file, content);
  io.out(io.words.files.written(file));
}
