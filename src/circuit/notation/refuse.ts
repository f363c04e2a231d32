/** Why a word doesn't belong where it stands. */
import type { OptionSaid } from '../../words/index.ts';
import { nearest } from '../nearest.ts';
import type { LineReader } from './line-reader.ts';
import type { Option } from './options.ts';
import { type Quantity, quantityAt, UNIT_WORDS } from './quantity.ts';

interface Place {
  /** Words of the options that belong here. */
  readonly known: readonly string[];
  /** What goes here. */
  readonly goes: { readonly of: string; readonly options: readonly OptionSaid[] };
}

/**
 * Says why the next word belongs to none of these options, and steps over it. `of`: a kind of device, or `supply`.
 * `allWords`: those that mean something elsewhere.
 */
export function refuse(
  line: LineReader,
  of: string,
  options: readonly Option[],
  allWords: ReadonlySet<string>,
): void {
  const place: Place = {
    known: options.flatMap((option) => option.words),
    goes: { of, options: options.map(({ usage }) => usage) },
  };
  const quantity = quantityAt(line);
  if (line.peek()?.kind === 'text') {
    line.problem({ says: 'unexpected-option.text', ...place.goes });
    line.skip();
  } else if (quantity) refuseQuantity(line, quantity, place);
  else refuseWord(line, line.peek()?.text ?? '', place, allWords);
}

function refuseQuantity(
  line: LineReader,
  { source, unit, notAUnit, words, column }: Quantity,
  { known, goes }: Place,
): void {
  // The word after a number was meant as its unit, so it is not reported a second time.
  const separate = notAUnit !== undefined && line.peekWord(1) === notAUnit;
  const unknown = notAUnit !== undefined && !(separate && known.includes(notAUnit));
  line.skip(words + (unknown && separate ? 1 : 0));
  skipRest(line);
  if (unit !== undefined) {
    line.problem({ says: 'unexpected-option.quantity', source, unit, ...goes }, column);
  } else if (unknown) {
    line.problem({ says: 'unknown-unit', unit: notAUnit, meant: nearest(notAUnit, known), ...goes }, column);
  } else {
    line.problem({ says: 'missing-unit', source, ...goes }, column);
  }
}

/** What belongs to a quantity that was wrong is not reported a second time: its unit, and what kind of current or phase. */
function skipRest(line: LineReader): void {
  if (UNIT_WORDS.includes(line.peekWord() ?? '')) line.skip();
  if (['AC', 'DC', '3AC', 'on', 'off'].includes(line.peekWord() ?? '')) line.skip();
}

function refuseWord(
  line: LineReader,
  word: string,
  { known, goes }: Place,
  allWords: ReadonlySet<string>,
): void {
  const { column } = line;
  line.skip();
  if (/^[+-]?[.,]?[0-9]/.test(word)) {
    skipRest(line);
    line.problem({ says: 'bad-number', word }, column);
  } else if (word.startsWith('#')) {
    line.problem({ says: 'comment-in-line' }, column);
    line.skip(line.words.length);
  } else if (allWords.has(word)) {
    line.problem({ says: 'unexpected-option', word, ...goes }, column);
  } else {
    line.problem({ says: 'unknown-word', word, meant: nearest(word, known), ...goes }, column);
  }
}
