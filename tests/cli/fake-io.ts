import { readFileSync, writeFileSync } from 'node:fs';
import type { Io } from '../../src/cli/io.ts';
import { createProgram, runProgram } from '../../src/cli/program.ts';
import { commands } from '../../src/words/en/commands/index.ts';

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export interface FakeOptions {
  /** Files by name, before those on the disk. */
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
  /** What is typed, line by line; afterwards the input ends. A function is called when it is its turn. */
  readonly lines?: readonly (string | ((printed: string) => string | undefined))[];
  /** English unless given. */
  readonly words?: Io['words'];
  readonly columns?: number;
  readonly rows?: number;
  readonly interactive?: boolean;
  readonly colour?: boolean;
  /** The clock; each question moves it on by `secondsALine`. */
  readonly now?: number;
  readonly secondsALine?: number;
  readonly environment?: Readonly<Record<string, string>>;
  readonly alongside?: NonNullable<Io['alongside']>;
  readonly whenStopped?: NonNullable<Io['whenStopped']>;
  readonly status?: NonNullable<Io['status']>;
}

/** A terminal that isn't one, and what was printed on it so far. */
export function fakeIo(options: FakeOptions = {}): { readonly io: Io; printed(): Omit<Ran, 'code'> } {
  const {
    files = {},
    lines = [],
    columns = 80,
    interactive = false,
    colour = false,
    secondsALine = 10,
  } = options;
  let out = '';
  let err = '';
  let clock = options.now ?? Date.UTC(2026, 2, 2, 9);
  const left = [...lines];
  const io: Io = {
    language: 'en',
    words: options.words ?? commands,
    out: (text) => {
      out += `${text}\n`;
    },
    err: (text) => {
      err += `${text}\n`;
    },
    read: async (file) => {
      const known = files[file] ?? (file === '-' ? '' : undefined);
      if (known === undefined) return readFileSync(file);
      return typeof known === 'string' ? Buffer.from(known) : known;
    },
    writeFile: (file, content) => writeFileSync(file, content),
    question: (prompt) => {
      out += prompt;
      clock += secondsALine * 1000;
      const next = left.shift();
      const line = typeof next === 'function' ? next(out) : next;
      if (line !== undefined) out += `${line}\n`;
      return Promise.resolve(line);
    },
    columns,
    ...(options.rows ? { rows: options.rows } : {}),
    colour,
    interactive,
    ...(options.whenStopped ? { whenStopped: options.whenStopped } : {}),
    ...(options.status ? { status: options.status } : {}),
    ...(options.alongside ? { alongside: options.alongside } : {}),
    now: () => clock,
    freshSeed: () => 'a-seed',
    environment: options.environment ?? {},
    home: '/nowhere',
  };
  return { io, printed: () => ({ out, err }) };
}

/** Runs one command line without a terminal. */
export async function runCommand(words: readonly string[], options: FakeOptions = {}): Promise<Ran> {
  const { io, printed } = fakeIo(options);
  const code = await runProgram(createProgram(io), words, io);
  return { code, ...printed() };
}
