/** Comma-separated values by RFC 4180: written so that every reader takes them, read so that nothing half-read is used. */
import type { Checked, Problem } from '../../../shared/problem.ts';
import { interchangeProblem } from '../problem-codes.ts';

export type Cell = string | number | null;

export interface CsvOptions {
  /**
   * Puts an apostrophe before what a spreadsheet would take for a formula: at the beginning of a text, and behind a semicolon or
   * a tab in it, at which spreadsheets of other countries divide a line. For files that people open; other programs get the
   * text as it is.
   */
  readonly forSpreadsheets?: boolean;
}

/** OWASP, CSV Injection: the signs a formula begins with, in both widths, and white space that is taken for a new cell. */
const FORMULA = /^(?=[\t\r\n])|(?<=^|[;\t\r\n])(?=[^\S\t\r\n]*"?[=+\-@＝＋－＠])/g;
const QUOTED = /[",\r\n]|^\s|\s$/;

function cellText(cell: Cell, { forSpreadsheets = false }: CsvOptions): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const text = forSpreadsheets ? cell.replace(FORMULA, "'") : cell;
  return QUOTED.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Lines end in CR LF, the last one too. */
export const writeCsv = (rows: readonly (readonly Cell[])[], options: CsvOptions = {}): string =>
  rows.map((row) => `${row.map((cell) => cellText(cell, options)).join(',')}\r\n`).join('');

/** The text of which such a file has this: without the apostrophes before formulas. */
export const withoutGuards = (text: string): string =>
  text.replace(/(?<=^|[;\t\r\n])'(?=\s*"?[=+\-@＝＋－＠]|[\t\r\n])/g, '');

export interface CsvRecord {
  /** On which line it begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** Splits a text into records. Takes CR LF, LF and CR as ends of lines, and passes over a byte order mark and empty lines. */
function records(text: string): Checked<readonly CsvRecord[]> {
  const found: CsvRecord[] = [];
  const problems: Problem[] = [];
  let [cells, line, begins] = [[] as string[], 1, 1];
  let at = text.startsWith('\uFEFF') ? 1 : 0;
  const endRecord = (): void => {
    if (cells.length > 1 || cells[0] !== '') found.push({ line: begins, cells });
    cells = [];
  };
  while (at < text.length) {
    if (text[at] === '"') {
      const opened = line;
      let value = '';
      at++;
      for (;;) {
        const quote = text.indexOf('"', at);
        if (quote < 0) {
          problems.push(interchangeProblem({ says: 'csv-quote.open' }, { line: opened }));
          return { ok: false, problems };
        }
        value += text.slice(at, quote);
        at = quote + 1;
        if (text[at] !== '"') break;
        value += '"';
        at++;
      }
      line += value.split(/\r\n|\r|\n/).length - 1;
      cells.push(value);
      if (at < text.length && !/[,\r\n]/.test(text[at]!)) {
        problems.push(interchangeProblem({ says: 'csv-quote' }, { line }));
        while (at < text.length && !/[,\r\n]/.test(text[at]!)) at++;
      }
    } else {
      const from = at;
      while (at < text.length && !/[,\r\n]/.test(text[at]!)) at++;
      const value = text.slice(from, at);
      if (value.includes('"')) problems.push(interchangeProblem({ says: 'csv-quote' }, { line }));
      cells.push(value);
    }
    if (text[at] === ',') {
      at++;
      // A comma at the very end leaves an empty value behind it.
      if (at === text.length) cells.push('');
      else if (/[\r\n]/.test(text[at]!)) cells.push('');
      else continue;
    }
    if (at < text.length) {
      at += text[at] === '\r' && text[at + 1] === '\n' ? 2 : 1;
      line++;
      endRecord();
      begins = line;
    }
  }
  if (cells.length > 0) endRecord();
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: found };
}

export interface CsvTable {
  readonly columns: readonly string[];
  readonly rows: readonly { readonly line: number; readonly value: (column: string) => string }[];
}

/**
 * Reads a table whose first line names the columns. Columns are found by name, whatever their order; a column that isn't
 * there reads as empty. Fails with `csv-empty`, `csv-quote` and `csv-width`, every line at once.
 */
export function readCsv(text: string): Checked<CsvTable> {
  const read = records(text);
  if (!read.ok) return read;
  const [head, ...body] = read.value;
  if (!head)
    return {
      ok: false,
      problems: [interchangeProblem({ says: 'csv-empty' }, { line: 1 })],
    };
  const wrong = body.filter(({ cells }) => cells.length !== head.cells.length);
  if (wrong.length > 0)
    return {
      ok: false,
      problems: wrong.map(({ line, cells }) =>
        interchangeProblem({ says: 'csv-width', fields: cells.length, columns: head.cells.length }, { line }),
      ),
    };
  const columns = head.cells.map((name) => name.trim());
  const indexOf = new Map(columns.map((name, index) => [name, index]));
  return {
    ok: true,
    value: {
      columns,
      rows: body.map(({ line, cells }) => ({
        line,
        value: (column) => cells[indexOf.get(column) ?? -1]?.trim() ?? '',
      })),
    },
  };
}
