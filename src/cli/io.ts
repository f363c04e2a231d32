import type { CommandWords } from '../words/commands.ts';

/** How a command meets the world: handed in, so that tests run commands without a terminal. */
export interface Io {
  /** The language of whoever reads: `en`. */
  readonly language: string;
  /** What is said, in that language. */
  readonly words: CommandWords;
  /** Prints one piece of text with a newline. */
  out(text: string): void;
  err(text: string): void;
  /**
   * Shows one line in the place of the one shown so before; an empty text takes it away. Absent where nobody sees it change.
   */
  readonly status?: (text: string) => void;
  /** Characters such a line may have: it is shown elsewhere than what is printed. */
  readonly statusColumns?: number;
  /**
   * Has somebody who wants to stop (Ctrl-C) call this, instead of ending the program at once; gives what takes that back.
   * Absent where nobody can.
   */
  readonly whenStopped?: (call: () => void) => () => void;
  /** Reads a whole file; `-` is standard input, to its end. Rejects with what the system says when it can't. */
  read(file: string): Promise<Uint8Array>;
  /** Writes a whole file, over one that is there. Throws what the system says when it can't. */
  writeFile(file: string, content: string | Uint8Array): void;
  /** Asks for one line; undefined at the end of input. */
  question(prompt: string): Promise<string | undefined>;
  /** Characters a line may have. */
  readonly columns: number;
  /** Lines that are seen at once; absent where nobody sits before it. */
  readonly rows?: number;
  /** Whether colour is shown. */
  readonly colour: boolean;
  /** Whether somebody sits at a terminal. */
  readonly interactive: boolean;
  /** Runs this program once more beside itself, on another core, and gives how to end it; absent where there is none. */
  readonly alongside?: (words: readonly string[]) => () => void;
  /** Milliseconds since 1970. */
  now(): number;
  /** A seed nobody chose. */
  freshSeed(): string;
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

/** A mistake of whoever called: told in words, exit code 2, never a stack trace. */
export class UsageError extends Error {
  readonly hint: string;

  constructor(message: string, hint = '') {
    super(message);
    this.hint = hint;
  }
}
