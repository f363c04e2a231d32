import { describe, expect, it } from 'vitest';
import { difficultyOf, type Family, families, free, generate } from '../../src/generator/index.ts';

const SEEDS = 16;

const mean = (family: Family, size: number): number => {
  const values = Array.from({ length: SEEDS }, (_, index) => {
    const generated = generate({ seed: `difficulty-${index}`, family: family.id, size });
    return generated.ok ? difficultyOf(generated.accepted) : Number.NaN;
  });
  return values.reduce((sum, value) => sum + value, 0) / values.length;
};

describe('difficulty', () => {
  it.each([...families, free])('grows with the size on average: $id', (family) => {
    const { min, max } = family.size;
    const means = Array.from({ length: max - min + 1 }, (_, index) => mean(family, min + index));
    // Neighbouring sizes may be as good as equal; over the whole scale it rises at every other step and in all.
    means.slice(1).forEach((value, index) => {
      expect(value, `size ${min + index + 1}`).toBeGreaterThan(means[index]! - 0.2);
    });
    means.slice(2).forEach((value, index) => {
      expect(value, `size ${min + index + 2}`).toBeGreaterThan(means[index]!);
    });
    expect(means.at(-1)!).toBeGreaterThan(means[0]!);
  });
});
