import { type Io, UsageError } from '../../io.ts';

/** Writes a file that was named in the command. */
export function writeNamed(io: Io, file: string, content: string | Uint8Array): void {
  try {
    io.writeFile(file, content);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    throw new UsageError(
      `${file} can't be written (${code ?? String(error)}).`,
      'Give a path in a folder that is there and that you may write to.',
    );
  }
  io.out(`Written: ${file}`);
}
