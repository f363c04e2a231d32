import type { CircuitProblemSaid } from '../../words/index.ts';
import type { Word } from './line-words.ts';
import type { Report } from './report.ts';

/** The words of one line with a place in them, and where to report what is wrong. */
export class LineReader {
  private at = 0;
  readonly words: readonly Word[];
  readonly line: number;
  private readonly end: number;
  private readonly report: Report;

  /** `end`: the column after the last character of the line. */
  constructor(words: readonly Word[], line: number, end: number, report: Report) {
    this.words = words;
    this.line = line;
    this.end = end;
    this.report = report;
  }

  get done(): boolean {
    return this.at >= this.words.length;
  }

  /** The column of the next word, or the end of the line. */
  get column(): number {
    return this.words[this.at]?.column ?? this.end;
  }

  peek(offset = 0): Word | undefined {
    return this.words[this.at + offset];
  }

  /** The next word if it is not a text in quotation marks. */
  peekWord(offset = 0): string | undefined {
    const word = this.peek(offset);
    return word?.kind === 'word' ? word.text : undefined;
  }

  skip(count = 1): void {
    this.at += count;
  }

  /** Reports what is wrong at the next word, or at another column. */
  problem(said: CircuitProblemSaid, column = this.column): void {
    this.report.add(said, { line: this.line, column });
  }
}
