/** Why a word doesn't belong where it stands. */
import { didYouMean, shown } from '../wording.ts';
import type { LineReader } from './line-reader.ts';
import type { Option } from './options.ts';
import { type Quantity, quantityAt, UNIT_WORDS } from './quantity.ts';

interface Place {
  /** `a relay`. */
  readonly what: string;
  /** Words of the options that belong here. */
  readonly known: readonly string[];
  /** `What goes here: …`. */
  readonly usage: string;
}

/** Says why the next word belongs to none of these options, and steps over it. `allWords`: those that mean something elsewhere. */
export function refuse(
  line: LineReader,
  what: string,
  options: readonly Option[],
  allWords: ReadonlySet<string>,
): void {
  const place: Place = {
    what,
    known: options.flatMap((option) => option.words),
    usage: `What goes here: ${what}: ${options.map((option) => `[${option.usage}]`).join(' ')}.`,
  };
  const quantity = quantityAt(line);
  if (line.peek()?.kind === 'text') {
    line.problem('unexpected-option', line.column, 'There is no place for this text.', place.usage);
    line.skip();
  } else if (quantity) refuseQuantity(line, quantity, place);
  else refuseWord(line, line.peek()?.text ?? '', place, allWords);
}

function refuseQuantity(
  line: LineReader,
  { source, unit, notAUnit, words, column }: Quantity,
  { what, known, usage }: Place,
): void {
  // The word after a number was meant as its unit, so it is not reported a second time.
  const separate = notAUnit !== undefined && line.peekWord(1) === notAUnit;
  const unknown = notAUnit !== undefined && !(separate && known.includes(notAUnit));
  line.skip(words + (unknown && separate ? 1 : 0));
  skipRest(line);
  if (unit !== undefined) {
    line.problem('unexpected-option', column, `"${source} ${unit}" doesn't belong to ${what}.`, usage);
  } else if (unknown) {
    line.problem(
      'unknown-unit',
      column,
      `${shown(notAUnit)} is no unit that is used here.`,
      `${didYouMean(notAUnit, known)}${usage}`,
    );
  } else {
    line.problem(
      'missing-unit',
      column,
      `The number ${source} has no unit.`,
      `Write what it is, such as ${source} V or ${source} poles. ${usage}`,
    );
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
  { what, known, usage }: Place,
  allWords: ReadonlySet<string>,
): void {
  const { column } = line;
  line.skip();
  if (/^[+-]?[.,]?[0-9]/.test(word)) {
    skipRest(line);
    line.problem(
      'bad-number',
      column,
      `${shown(word)} is no number.`,
      'A number has digits and at most one point, without a sign: 24 or 3.3.',
    );
  } else if (word.startsWith('#')) {
    line.problem(
      'comment-in-line',
      column,
      'A comment stands on a line of its own.',
      'Move it to a line that begins with #.',
    );
    line.skip(line.words.length);
  } else if (allWords.has(word)) {
    line.problem('unexpected-option', column, `"${word}" doesn't belong to ${what}, or not here.`, usage);
  } else {
    line.problem(
      'unknown-word',
      column,
      `${shown(word)} is no word of the notation.`,
      `${didYouMean(word, known)}${usage}`,
    );
  }
}
