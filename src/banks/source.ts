/** A file of a bank as lines with numbers. */
import type { BankProblemSaid } from '../words/index.ts';
import { BANK_LIMITS } from './limits.ts';
import type { BankReport } from './report.ts';

/** A file as it was handed in; its name may have folders before it. */
export interface BankFile {
  readonly file: string;
  readonly text: string;
}

/** Lines in a row, as they stand in the file, the first of them with its number. */
export interface Lines {
  readonly first: number;
  readonly lines: readonly string[];
}

/** The lines of a file without a byte order mark; undefined (and reported) when the file is too large to be read. */
export function linesOf(text: string, report: BankReport): readonly string[] | undefined {
  const tooLarge = (line: number, said: BankProblemSaid): undefined => {
    report.add(said, { line, column: 1 });
  };
  if (text.length > BANK_LIMITS.characters)
    return tooLarge(1, {
      says: 'bank-too-large.characters',
      characters: text.length,
      most: BANK_LIMITS.characters,
    });
  const lines = text.replace(/^\ufeff/, '').split(/\r\n|\n|\r/);
  if (lines.length > BANK_LIMITS.lines)
    return tooLarge(BANK_LIMITS.lines + 1, {
      says: 'bank-too-large.lines',
      lines: lines.length,
      most: BANK_LIMITS.lines,
    });
  const long = lines.findIndex((line) => line.length > BANK_LIMITS.lineLength);
  if (long >= 0)
    return tooLarge(long + 1, {
      says: 'bank-too-large.line',
      characters: lines[long]!.length,
      most: BANK_LIMITS.lineLength,
    });
  const deep = lines.findIndex((line) => leadingMarks(line) > BANK_LIMITS.indentation);
  if (deep >= 0)
    return tooLarge(deep + 1, { says: 'bank-too-large.indentation', most: BANK_LIMITS.indentation });
  return hasStrangeCharacters(lines, report) ? undefined : lines;
}

/** Control characters, and those that turn text round or hide in it: a terminal would obey them, a reader not see them. */
function hasStrangeCharacters(lines: readonly string[], report: BankReport): boolean {
  let any = false;
  lines.forEach((line, index) => {
    const at = line.search(/(?!\t)[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
    if (at < 0) return;
    any = true;
    const code = line.codePointAt(at)!.toString(16).toUpperCase().padStart(4, '0');
    report.add({ says: 'bank-character', code: `U+${code}` }, { line: index + 1, column: at + 1 });
  });
  return any;
}

/** How many characters of a line can open quotes, list items and indented parts, one inside another. */
function leadingMarks(line: string): number {
  if (/^ {0,3}([-*_=])(?:[ \t]*\1)*[ \t]*$/.test(line)) return 0;
  return /^(?:[\s>*+-]|\d{1,9}[.)](?=\s|$))*/.exec(line)![0].length;
}
