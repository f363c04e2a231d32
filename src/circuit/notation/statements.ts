import { LIMITS } from '../limits.ts';
import { LineReader } from './line-reader.ts';
import { wordsOf } from './line-words.ts';
import type { Report } from './report.ts';

/** The statements of a list of acts or faults: separated by `;` or by the end of the line. Empty ones are left out. */
export function statementsOf(text: string, what: 'acts' | 'faults', report: Report): LineReader[] {
  const first = { line: 1, column: 1 };
  const most = LIMITS[what];
  if (text.length > LIMITS.scenarioCharacters) {
    const says = what === 'acts' ? 'too-large.actsText' : 'too-large.faultsText';
    report.add({ says, most: LIMITS.scenarioCharacters }, first);
    return [];
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
  if (statements.length <= most) return statements;
  report.add({ says: `too-large.${what}`, count: statements.length, most }, first);
  return [];
}
