/** What a word was meant to be. */

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
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
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
