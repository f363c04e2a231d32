import { byMoments, type Entry, type StatesQuestion } from '../entries.ts';
import { plainName } from './tokens.ts';

export type FoundEntry =
  | { readonly kind: 'one'; readonly entry: Entry }
  | { readonly kind: 'none' }
  | { readonly kind: 'several'; readonly entries: readonly Entry[] };

/**
 * The thing asked that a word names: `-H1`, `h1`, `A1:I2`, and `I2` where only one controller is asked about.
 *
 * @param after - only what is asked at this point of the scenario
 */
export function findEntry(entries: readonly Entry[], word: string, after: number | undefined): FoundEntry {
  const plain = plainName(word);
  const here = after === undefined ? entries : entries.filter((entry) => entry.after === after);
  const whole = here.filter(({ item }) => plainName(item) === plain);
  const found = whole.length > 0 ? whole : here.filter(({ item }) => plainName(item).endsWith(`:${plain}`));
  const [first] = found;
  if (!first) return { kind: 'none' };
  return found.length === 1 ? { kind: 'one', entry: first } : { kind: 'several', entries: found };
}

/** `-H1, -H2`, with the step before them where there are several: what may be named. */
export function namesOf(question: StatesQuestion, entries: readonly Entry[]): string {
  if (!byMoments(question)) return entries.map(({ item }) => item).join(' ');
  const steps = new Map<number, string[]>();
  for (const { after, item } of entries) steps.set(after, [...(steps.get(after) ?? []), item]);
  return [...steps].map(([after, items]) => `${after}: ${items.join(' ')}`).join('; ');
}
