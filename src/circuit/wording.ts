/** Small pieces of wording for messages and hints. */

const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;
const SHOWN = 40;

/** A word of the input as shown in a message: cut short, and nothing in it that a terminal would obey. */
export function shown(word: string): string {
  const cut = word.length > SHOWN ? `${word.slice(0, SHOWN)}…` : word;
  return `"${cut.replace(UNPRINTABLE, (char) => `\\u${char.codePointAt(0)!.toString(16).padStart(4, '0')}`)}"`;
}

/** `a`, `a or b`, `a, b or c`. */
export function anyOf(items: readonly string[], word = 'or'): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} ${word} ${last}`;
}

/** At most this many items of a long list, and that there are more. */
export const someOf = (items: readonly string[], most = 12): string =>
  items.length <= most ? items.join(', ') : `${items.slice(0, most).join(', ')}, …`;

/** `a relay`, `an on-delay`; kinds that are a plural stand alone. */
export const article = (noun: string): string =>
  /(puts|terminals)$/.test(noun) ? noun : `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;

/** Edit distance with neighbouring letters exchanged counted as one; gives up above `most`. */
function distance(one: string, other: string, most: number): number {
  if (Math.abs(one.length - other.length) > most) return most + 1;
  let before: number[] = [];
  let row = Array.from({ length: other.length + 1 }, (_, index) => index);
  for (let i = 1; i <= one.length; i++) {
    const next = [i];
    for (let j = 1; j <= other.length; j++) {
      const same = one[i - 1] === other[j - 1];
      let best = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]) {
        best = Math.min(best, before[j - 2]! + 1);
      }
      next.push(best);
    }
    before = row;
    row = next;
  }
  return row[other.length]!;
}

/** The candidate a slip of the pen away from this word, if there is one. */
function nearest(word: string, candidates: Iterable<string>): string | undefined {
  if (word.length > 24) return undefined;
  const lower = word.toLowerCase();
  let most = Math.min(3, Math.floor(word.length / 3) + (word.length < 3 ? 1 : 0));
  let found: string | undefined;
  for (const candidate of candidates) {
    const away = distance(lower, candidate.toLowerCase(), most);
    if (away <= most && (found === undefined || away < most)) {
      found = candidate;
      most = away;
      if (away === 0) break;
    }
  }
  return found;
}

/** `Did you mean relay? ` or nothing. */
export function didYouMean(word: string, candidates: Iterable<string>): string {
  const found = nearest(word, candidates);
  return found === undefined ? '' : `Did you mean ${found}? `;
}
