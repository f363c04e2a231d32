import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { createReadStream, writeFileSync } from 'node:fs';
import { availableParallelism, homedir } from 'node:os';
import type { Readable } from 'node:stream';
import { MOST_BYTES } from './files.ts';
import type { Io } from './io.ts';
import { TypedLines } from './typed-lines.ts';
import { whenStopped } from './until-stopped.ts';

/** Set for a program that was started by `alongside`: it starts no others. */
const ALONGSIDE = 'POLEWISE_ALONGSIDE';

function alongside(words: readonly string[]): () => void {
  const [, program = ''] = process.argv;
  const child = spawn(process.execPath, [...process.execArgv, program, ...words], {
    stdio: 'ignore',
    env: { ...process.env, [ALONGSIDE]: '1' },
  });
  // What it doesn't do is done here.
  child.on('error', () => undefined);
  return () => {
    child.kill();
  };
}

/** As a stream, because whoever writes into a pipe may take its time; and not without end. */
async function wholeOf(stream: Readable): Promise<Uint8Array> {
  const pieces: Buffer[] = [];
  let bytes = 0;
  for await (const piece of stream as AsyncIterable<Buffer>) {
    bytes += piece.length;
    if (bytes > MOST_BYTES) throw Object.assign(new Error('EFBIG'), { code: 'EFBIG' });
    pieces.push(piece);
  }
  return Buffer.concat(pieces);
}

/** The real terminal, on which that language is spoken. `close` lets the program end. */
export function terminalIo(spoken: Pick<Io, 'language' | 'words'>): Io & { close(): void } {
  const { stdin, stdout, env } = process;
  const interactive = Boolean(stdin.isTTY && stdout.isTTY);
  const lines = new TypedLines(stdin, interactive ? stdout : undefined);
  const { stderr } = process;
  /** Back to the beginning of the line, and rid of what is on it. */
  const AFRESH = `\r${String.fromCharCode(27)}[K`;
  return {
    ...spoken,
    ...(stderr.isTTY && env['TERM'] !== 'dumb'
      ? {
          status: (text: string) => void stderr.write(`${AFRESH}${text}`),
          statusColumns: stderr.columns || 80,
        }
      : {}),
    out: (text) => {
      stdout.write(`${text}\n`);
    },
    err: (text) => {
      process.stderr.write(`${text}\n`);
    },
    read: (file) => wholeOf(file === '-' ? stdin : createReadStream(file)),
    writeFile: (file, content) => writeFileSync(file, content),
    question: (prompt) => {
      if (!interactive) stdout.write(prompt);
      return lines.next(prompt);
    },
    columns: Math.max(40, Math.min(stdout.columns ?? 80, 160)),
    ...(interactive && stdout.rows ? { rows: stdout.rows } : {}),
    colour: Boolean(stdout.isTTY) && !env['NO_COLOR'] && env['TERM'] !== 'dumb',
    interactive,
    ...(availableParallelism() > 1 && !env[ALONGSIDE] ? { alongside } : {}),
    whenStopped,
    now: () => Date.now(),
    freshSeed: () => randomBytes(6).toString('hex'),
    environment: env,
    home: homedir(),
    close: () => lines.close(),
  };
}
