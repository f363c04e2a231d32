import { type Io, UsageError } from '../../io.ts';

/** Writes a file that was named in the command. */
export function writeNamed(io: Io, file: string, content: string | Uint8Array): void {
  const { files } = io.words;
  try {
    io.writeFile(file, content);
  } catch (error) {
    const why = (error as NodeJS.ErrnoException).code ?? String(error);
    throw new UsageError(files.mayNotBeWritten.wrong({ file, why }), files.mayNotBeWritten.right);
  }
  io.out(files.written(file));
}
