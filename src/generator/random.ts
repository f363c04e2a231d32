/**
 * The random source of everything generated: seeded, and the same on every machine. A child stream for each purpose keeps
 * a change in one place from shifting the choices of all others.
 */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export interface Random {
  /** A whole number from `low` to `high`, both included. */
  int(low: number, high: number): number;
  /** True with the given probability. */
  chance(probability: number): boolean;
  pick<T>(list: readonly T[]): T;
  /** A new list in random order. */
  shuffle<T>(list: readonly T[]): T[];
  /** `count` different members in random order. */
  sample<T>(list: readonly T[], count: number): T[];
  /** A stream of its own, fixed by this one's seed and the label. */
  child(label: string): Random;
}

/** FNV-1a over the code units: any text becomes a 32-bit seed, the same everywhere. */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) {
    hash ^= text.charCodeAt(index);
    hash = Math.imul(hash, 0x01000193);
  }
  return hash | 0;
}

/** The stream of a seed. */
export function randomOf(seed: string): Random {
  const source = xoroshiro128plus(seedOf(seed));
  const int = (low: number, high: number): number => uniformInt(source, low, high);
  const shuffle = <T>(list: readonly T[]): T[] => {
    const result = [...list];
    for (let last = result.length - 1; last > 0; last--) {
      const other = int(0, last);
      [result[last], result[other]] = [result[other]!, result[last]!];
    }
    return result;
  };
  return {
    int,
    chance: (probability) => int(0, 999_999) < probability * 1_000_000,
    pick: (list) => {
      if (list.length === 0) throw new RangeError('nothing to pick from');
      return list[int(0, list.length - 1)]!;
    },
    shuffle,
    sample: (list, count) => shuffle(list).slice(0, count),
    child: (label) => randomOf(`${seed}/${label}`),
  };
}
