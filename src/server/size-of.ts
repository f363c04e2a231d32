/** How much there is in a value that came as JSON. */
export interface Size {
  /** Texts, numbers, lists and so on, one inside another counted each. */
  readonly values: number;
  /** Letters of its texts and names. */
  readonly letters: number;
}

/**
 * Counts, and stops counting above the limit; then it gives null. Checking a value against a schema costs far more for
 * each wrong piece of it than sending one, so what is too large has to be known before.
 */
export function sizeOf(value: unknown, most: Size): Size | null {
  let values = 1;
  let letters = 0;
  const left: unknown[] = [value];
  while (left.length > 0) {
    const next = left.pop();
    if (typeof next === 'string') letters += next.length;
    else if (Array.isArray(next)) {
      values += next.length;
      if (values > most.values) return null;
      for (const entry of next) left.push(entry);
    } else if (typeof next === 'object' && next !== null) {
      const names = Object.keys(next);
      values += names.length;
      if (values > most.values) return null;
      for (const name of names) {
        letters += name.length;
        left.push((next as Record<string, unknown>)[name]);
      }
    }
    if (letters > most.letters) return null;
  }
  return { values, letters };
}
