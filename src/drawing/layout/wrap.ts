/** Breaks texts into lines. */

type Measure = (text: string) => number;

interface Word {
  readonly text: string;
  readonly width: number;
}

/** A number stays with the word before it: `Roller` and `mill 2`, not a 2 alone in its line. */
const BETWEEN = /(?<![a-z])\s+|\s+(?!\d{1,2}(?:\W|$))/i;

function wordsOf(text: string, measure: Measure): Word[] {
  const words: Word[] = [];
  for (const word of text.split(BETWEEN)) if (word) words.push({ text: word, width: measure(word) });
  return words;
}

/** Words in lines of at most `width`. Widths of words and blanks add up, as in every profile. */
function filled(words: readonly Word[], width: number, measure: Measure): string[] {
  const blank = measure(' ');
  const lines: string[] = [];
  let line = '';
  let taken = 0;
  for (const word of words) {
    const joined = line ? taken + blank + word.width : word.width;
    if (joined <= width) {
      line = line ? `${line} ${word.text}` : word.text;
      taken = joined;
      continue;
    }
    if (line) lines.push(line);
    line = word.text;
    taken = word.width;
    while (taken > width && line.length > 1) {
      let cut = line.length - 1;
      while (cut > 1 && measure(line.slice(0, cut)) > width) cut--;
      lines.push(line.slice(0, cut));
      line = line.slice(cut);
      taken = measure(line);
    }
  }
  if (line) lines.push(line);
  return lines;
}

/** Breaks a text into lines no wider than `width`; a word that is wider alone is cut. */
export const wrapText = (text: string, width: number, measure: Measure): string[] =>
  filled(wordsOf(text, measure), width, measure);

/**
 * The narrowest of the given widths at which the text takes at most `most` lines and no word is cut; else the widest.
 */
export function wrapNarrow(
  text: string,
  widths: readonly number[],
  most: number,
  measure: Measure,
): string[] {
  const words = wordsOf(text, measure);
  const longest = words.reduce((least, word) => Math.max(least, word.width), 0);
  const widest = widths[widths.length - 1] ?? longest;
  let lines: string[] = [];
  for (const width of widths) {
    if (width < longest && width !== widest) continue;
    lines = filled(words, width, measure);
    if (lines.length <= most) return lines;
  }
  return lines;
}
