/** Words of the input as they may be shown. */

const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;
const SHOWN = 40;

/** A word of the input cut short, and nothing in it that a terminal would obey. */
export function printable(word: string): string {
  const cut = word.length > SHOWN ? `${word.slice(0, SHOWN)}…` : word;
  return cut.replace(UNPRINTABLE, (char) => `\\u${char.codePointAt(0)!.toString(16).padStart(4, '0')}`);
}
