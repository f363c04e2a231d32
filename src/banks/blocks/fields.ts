/**
 * What stands in a drawing or question: fields `key: value`. A value goes on over the indented lines under its key. Lines
 * that begin with `#` are remarks for other authors.
 */
import { anyOf, didYouMean, shown } from '../../circuit/wording.ts';
import type { BankCode } from '../problem-codes.ts';
import type { BankReport } from '../report.ts';
import type { Lines, Spot } from '../source.ts';

export interface Field {
  readonly key: string;
  readonly keySpot: Spot;
  /** The whole value, line ends kept; `spot` is where its first character stands. */
  readonly text: string;
  readonly spot: Spot;
}

/** A piece of a value between commas or line ends, without the blanks around it. */
export interface Piece {
  readonly text: string;
  readonly spot: Spot;
}

export type Fields = ReadonlyMap<string, Field>;

/** Reads fields; undefined when a line is wrong (every one reported). `what`: the block, for messages. */
export function readFields(
  { first, lines }: Lines,
  known: readonly string[],
  what: string,
  report: BankReport,
): Fields | undefined {
  const fields = new Map<string, Field>();
  let sound = true;
  const wrong = (spot: Spot, code: BankCode, message: string, hint: string): void => {
    sound = false;
    report.add(code, spot, message, hint);
  };
  const keysAre = `The keys of ${what} are ${anyOf(known, 'and')}.`;
  let current: string | undefined;
  lines.forEach((line, index) => {
    const spot = { line: first + index, column: 1 };
    if (line.trim() === '' || /^\s/.test(line)) {
      const field = current === undefined ? undefined : fields.get(current);
      if (field) fields.set(field.key, { ...field, text: `${field.text}\n${line}` });
      else if (line.trim() !== '' && (current === undefined || known.includes(current)))
        wrong(
          spot,
          'bank-field',
          'This line belongs to no key.',
          'Begin a line with its key: do: press -S1.',
        );
      return;
    }
    if (line.startsWith('#')) return;
    const match = /^([A-Za-z][A-Za-z-]*)[ \t]*:[ \t]*/.exec(line);
    if (!match) {
      wrong(spot, 'bank-field', 'This line has no key.', `${keysAre} Indent what belongs to the key above.`);
      return;
    }
    const key = match[1]!;
    current = key;
    if (!known.includes(key)) {
      wrong(
        spot,
        'bank-unknown-key',
        `${shown(key)} is no key of ${what}.`,
        `${didYouMean(key, known)}${keysAre}`,
      );
      return;
    }
    if (fields.has(key)) {
      wrong(spot, 'bank-repeated-key', `The key ${key} is there twice.`, 'Put both into one.');
      // What stands under it isn't the first one's, and it has had its say.
      current = '';
      return;
    }
    fields.set(key, {
      key,
      keySpot: spot,
      text: line.slice(match[0].length),
      spot: { line: spot.line, column: match[0].length + 1 },
    });
  });
  return sound ? fields : undefined;
}

/** The pieces of a value that is a list, separated by commas or line ends; empty ones are left out. */
export function piecesOf({ text, spot }: Field): readonly Piece[] {
  return text.split('\n').flatMap((line, index) => {
    let at = index === 0 ? spot.column : 1;
    return line.split(',').flatMap((piece) => {
      const column = at + (piece.length - piece.trimStart().length);
      at += piece.length + 1;
      return piece.trim() === '' ? [] : [{ text: piece.trim(), spot: { line: spot.line + index, column } }];
    });
  });
}

/** The lines of a value that are not empty, each without the blanks around it. */
export function linesOfField({ text, spot }: Field): readonly Piece[] {
  return text.split('\n').flatMap((line, index) => {
    const column = (index === 0 ? spot.column : 1) + (line.length - line.trimStart().length);
    return line.trim() === '' ? [] : [{ text: line.trim(), spot: { line: spot.line + index, column } }];
  });
}

/** A value that is prose: its lines joined. */
export const proseOf = (field: Field): string =>
  linesOfField(field)
    .map(({ text }) => text)
    .join(' ');
