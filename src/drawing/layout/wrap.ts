/** A number stays with the word before it: `Roller` and `mill 2`, not a 2 alone in its line. */
const wordsOf = (text: string): string[] =>
  text.split(/(?<![a-z])\s+|\s+(?!\d{1,2}(?:\W|$))/i).filter(Boolean);

/** Breaks a text into lines no wider than `width`; a word that is wider alone is cut. */
export function wrapText(text: string, width: number, measure: (text: string) => number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of wordsOf(text)) {
    const joined = line ? `${line} ${word}` : word;
    if (measure(joined) <= width) {
      line = joined;
      continue;
    }
    if (line) lines.push(line);
    let rest = word;
    while (measure(rest) > width && rest.length > 1) {
      let cut = rest.length - 1;
      while (cut > 1 && measure(rest.slice(0, cut)) > width) cut--;
      lines.push(rest.slice(0, cut));
      rest = rest.slice(cut);
    }
    line = rest;
  }
  if (line) lines.push(line);
  return lines;
}

/**
 * The narrowest of the given widths at which the text takes at most `most` lines and no word is cut; else the widest.
 */
export function wrapNarrow(
  text: string,
  widths: readonly number[],
  most: number,
  measure: (text: string) => number,
): string[] {
  const longest = Math.max(0, ...wordsOf(text).map(measure));
  const widest = widths[widths.length - 1] ?? longest;
  let lines: string[] = [];
  for (const width of widths) {
    if (width < longest && width !== widest) continue;
    lines = wrapText(text, width, measure);
    if (lines.length <= most) return lines;
  }
  return lines;
}
