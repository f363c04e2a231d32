import type { Report } from './report.ts';

/** One word of a line, or one text in quotation marks (`text` is then what stands between them, unescaped). */
export interface Word {
  readonly kind: 'word' | 'text';
  readonly text: string;
  /** From 1, in UTF-16 code units. */
  readonly column: number;
}

const isBlank = (char: string | undefined): boolean => char === ' ' || char === '\t' || char === '\u00a0';

/**
 * The words of one line. A text runs from `"` to `"`; inside it `\"` is a quotation mark and `\\` a backslash. A text that
 * is not closed runs to the end of the line and is reported.
 */
export function wordsOf(line: string, lineNumber: number, report: Report): Word[] {
  const words: Word[] = [];
  let at = 0;
  while (at < line.length) {
    if (isBlank(line[at])) {
      at += 1;
      continue;
    }
    const column = at + 1;
    if (line[at] !== '"') {
      while (at < line.length && !isBlank(line[at]) && line[at] !== '"') at += 1;
      words.push({ kind: 'word', text: line.slice(column - 1, at), column });
      continue;
    }
    const { text, end } = quoted(line, at, lineNumber, report);
    words.push({ kind: 'text', text, column });
    at = end;
  }
  return words;
}

function quoted(
  line: string,
  start: number,
  lineNumber: number,
  report: Report,
): { text: string; end: number } {
  const pieces: string[] = [];
  let at = start + 1;
  let from = at;
  while (at < line.length && line[at] !== '"') {
    if (line[at] !== '\\') {
      at += 1;
      continue;
    }
    const next = line[at + 1];
    if (next !== '"' && next !== '\\') {
      report.add({ says: 'bad-escape' }, { line: lineNumber, column: at + 1 });
      at += 1;
      continue;
    }
    pieces.push(line.slice(from, at), next);
    at += 2;
    from = at;
  }
  if (at >= line.length) {
    report.add({ says: 'unclosed-quote' }, { line: lineNumber, column: start + 1 });
  }
  return { text: pieces.join('') + line.slice(from, Math.min(at, line.length)), end: at + 1 };
}

/** A text as the notation writes it. */
export const quote = (text: string): string => `"${text.replace(/[\\"]/g, '\\$&')}"`;
