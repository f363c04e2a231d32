/**
 * What stands in a drawing or question: fields `key: value`. A value goes on over the indented lines under its key. Lines
 * that begin with `#` are remarks for other authors.
 */
import { nearest } from '../../circuit/index.ts';
import type { BankProblemSaid } from '../../words/index.ts';
import type { Position } from '../position.ts';
import type { BankReport } from '../report.ts';
import type { Lines } from '../source.ts';

export interface Field {
  readonly key: string;
  readonly keyPosition: Position;
  /** The whole value, line ends kept; `position` is where its first character stands. */
  readonly text: string;
  readonly position: Position;
}

/** A piece of a value between commas or line ends, without the blanks around it. */
export interface Piece {
  readonly text: string;
  readonly position: Position;
}

export type Fields = ReadonlyMap<string, Field>;

/** Reads fields; undefined when a line is wrong (every one reported). `of`: `drawing`, or a kind of question. */
export function readFields(
  { first, lines }: Lines,
  known: readonly string[],
  of: string,
  report: BankReport,
): Fields | undefined {
  const fields = new Map<string, Field>();
  let sound = true;
  const wrong = (position: Position, said: BankProblemSaid): void => {
    sound = false;
    report.add(said, position);
  };
  let current: string | undefined;
  lines.forEach((line, index) => {
    const position = { line: first + index, column: 1 };
    if (line.trim() === '' || /^\s/.test(line)) {
      const field = current === undefined ? undefined : fields.get(current);
      if (field) fields.set(field.key, { ...field, text: `${field.text}\n${line}` });
      else if (line.trim() !== '' && (current === undefined || known.includes(current)))
        wrong(position, { says: 'bank-field' });
      return;
    }
    if (line.startsWith('#')) return;
    const match = /^([A-Za-z][A-Za-z-]*)[ \t]*:[ \t]*/.exec(line);
    if (!match) {
      wrong(position, { says: 'bank-field.noKey', of, keys: known });
      return;
    }
    const key = match[1]!;
    current = key;
    if (!known.includes(key)) {
      wrong(position, { says: 'bank-unknown-key', key, meant: nearest(key, known), of, keys: known });
      return;
    }
    if (fields.has(key)) {
      wrong(position, { says: 'bank-repeated-key', key });
      // What stands under it isn't the first one's, and it has had its say.
      current = '';
      return;
    }
    fields.set(key, {
      key,
      keyPosition: position,
      text: line.slice(match[0].length),
      position: { line: position.line, column: match[0].length + 1 },
    });
  });
  return sound ? fields : undefined;
}

/** The pieces of a value that is a list, separated by commas or line ends; empty ones are left out. */
export function piecesOf({ text, position }: Field): readonly Piece[] {
  return text.split('\n').flatMap((line, index) => {
    let at = index === 0 ? position.column : 1;
    return line.split(',').flatMap((piece) => {
      const column = at + (piece.length - piece.trimStart().length);
      at += piece.length + 1;
      return piece.trim() === ''
        ? []
        : [{ text: piece.trim(), position: { line: position.line + index, column } }];
    });
  });
}

/** The lines of a value that are not empty, each without the blanks around it. */
export function linesOfField({ text, position }: Field): readonly Piece[] {
  return text.split('\n').flatMap((line, index) => {
    const column = (index === 0 ? position.column : 1) + (line.length - line.trimStart().length);
    return line.trim() === ''
      ? []
      : [{ text: line.trim(), position: { line: position.line + index, column } }];
  });
}

/** A value that is prose: its lines joined. */
export const proseOf = (field: Field): string =>
  linesOfField(field)
    .map(({ text }) => text)
    .join(' ');
