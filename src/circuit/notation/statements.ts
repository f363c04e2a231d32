import { LIMITS } from '../limits.ts';
import { LineReader } from './line-reader.ts';
import { wordsOf } from './line-words.ts';
import type { Report } from './report.ts';

/** The statements of a list of acts or faults: separated by `;` or by the end of the line. Empty ones are left out. */
export function statementsOf(text: string, most: number, what: string, report: Report): LineReader[] {
  const tooMany = (message: string) => {
    report.add({ code: 'too-large', line: 1, column: 1, message, hint: `Leave some ${what} out.` });
    return [];
  };
  if (text.length > LIMITS.scenarioCharacters) {
    return tooMany(`This is too long to be read: at most ${LIMITS.scenarioCharacters} characters.`);
  }
  const statements: LineReader[] = [];
  text.split(/\r\n|\n|\r/).forEach((source, index) => {
    let start = 0;
    for (const piece of source.split(';')) {
      const offset = start;
      const words = wordsOf(piece, index + 1, report).map((word) => ({
        ...word,
        column: word.column + offset,
      }));
      const end = offset + piece.trimEnd().length + 1;
      if (words.length > 0) statements.push(new LineReader(words, index + 1, end, report));
      start += piece.length + 1;
    }
  });
  return statements.length > most
    ? tooMany(`There are ${statements.length} ${what}; at most ${most} are read.`)
    : statements;
}
