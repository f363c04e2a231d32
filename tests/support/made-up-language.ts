/**
 * A language that nobody speaks, made of another one: letters have accents, texts are 40 % longer and stand in brackets. What
 * stands outside of brackets on a screen or a paper has not come through a catalogue.
 */

/** ISO 639-2 leaves the codes from qaa to qtz for local use (from memory). */
export const MADE_UP = 'qaa';

const ACCENTED: Readonly<Record<string, string>> = {
  a: 'á',
  c: 'ç',
  e: 'é',
  i: 'î',
  n: 'ñ',
  o: 'ö',
  s: 'š',
  u: 'ü',
  y: 'ý',
  A: 'Å',
  E: 'É',
  I: 'Î',
  O: 'Ö',
  U: 'Û',
};

/** Elements and places in a sentence, emphasis in a terminal, and what has been said already stay as they are. */
const KEPT = new RegExp(`(\\{\\w+\\}|</?\\w+>|${String.fromCharCode(27)}\\[\\d+m|⟦.*⟧)`, 's');

/** A text in the made-up language. */
export function madeUp(text: string): string {
  if (text.trim() === '') return text;
  const accented = text
    .split(KEPT)
    .map((piece, at) =>
      at % 2 === 1 ? piece : piece.replace(/[a-zA-Z]/g, (letter) => ACCENTED[letter] ?? letter),
    )
    .join('');
  // In words that can stand on lines of their own.
  const longer = '·'.repeat(Math.ceil(text.length * 0.4)).replace(/·{8}(?=·)/g, '$& ');
  return `⟦${accented}${longer}⟧`;
}

/** Everything that a catalogue says, in the made-up language. */
export function madeUpLanguage<T>(words: T): T {
  if (typeof words === 'string') return madeUp(words) as T;
  if (typeof words === 'function')
    return ((...values: unknown[]) =>
      madeUpLanguage((words as (...values: unknown[]) => unknown)(...values))) as T;
  if (typeof words !== 'object' || words === null) return words;
  const entries = Object.entries(words).map(([key, said]) => [key, madeUpLanguage<unknown>(said)]);
  return (Array.isArray(words) ? entries.map(([, said]) => said) : Object.fromEntries(entries)) as T;
}

/** What of a text has not come through a catalogue of the made-up language. */
export function unsaid(text: string): string {
  let left = text;
  for (let before = ''; before !== left; ) {
    before = left;
    left = left.replace(/⟦[^⟦⟧]*⟧/g, ' ');
  }
  return left;
}
