import { createInterface, type Interface } from 'node:readline';
import type { Readable, Writable } from 'node:stream';

/** Lines as they are typed, or come from a pipe: those that come before they are asked for wait. */
export class TypedLines {
  private readonly from: Readable;
  /** Where a prompt is shown: somebody sits there. */
  private readonly shownOn: Writable | undefined;
  private reader: Interface | undefined;
  private readonly lines: string[] = [];
  private waiting: ((line: string | undefined) => void) | undefined;
  private ended = false;

  constructor(from: Readable, shownOn: Writable | undefined) {
    this.from = from;
    this.shownOn = shownOn;
  }

  private hand(line: string | undefined): boolean {
    if (!this.waiting) return false;
    const give = this.waiting;
    this.waiting = undefined;
    give(line);
    return true;
  }

  private open(): Interface {
    if (this.reader) return this.reader;
    const reader = createInterface({
      input: this.from,
      output: this.shownOn,
      terminal: this.shownOn !== undefined,
    });
    reader.on('line', (line) => {
      if (!this.hand(line)) this.lines.push(line);
    });
    reader.on('close', () => {
      this.ended = true;
      this.hand(undefined);
    });
    // Ctrl-C at the prompt ends the practice as the end of input does: everything marked is kept already.
    reader.on('SIGINT', () => reader.close());
    this.reader = reader;
    return reader;
  }

  /** The next one; undefined at the end. */
  next(prompt: string): Promise<string | undefined> {
    const reader = this.open();
    const before = this.lines.shift();
    if (before !== undefined) return Promise.resolve(before);
    if (this.ended) return Promise.resolve(undefined);
    return new Promise((resolve) => {
      this.waiting = resolve;
      if (!this.shownOn) return;
      reader.setPrompt(prompt);
      reader.prompt();
    });
  }

  close(): void {
    this.reader?.close();
  }
}
