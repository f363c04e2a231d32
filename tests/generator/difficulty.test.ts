import { describe, expect, it } from 'vitest';
import { readActs, readCircuit } from '../../src/circuit/index.ts';
import {
  accept,
  difficultyOf,
  type Family,
  families,
  featuresOf,
  free,
  generate,
} from '../../src/generator/index.ts';
import { told } from '../support/in-english.ts';

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

  it('is read off the circuit: levels, contacts, parallel ways, contacts elsewhere, memories, timers', () => {
    const text = `supply A 24 V AC
supply B 24 V DC
-F1 fuse
-B1 field-contact make
-S1 push-button make
-K1 relay 3 poles
-K2 on-delay 5 s 2 poles
-H1 lamp
-A1 inputs 1 24V-1
sheet 1
A:L  -F1:1-2  -S1:13-14  -K1:A1-A2  A:N
-F1:2  -K1:11-14  -S1:14
-F1:2  -B1:13-14  -K1:21-24  -K2:A1-A2  A:N
sheet 2
-F1:2  -K2:15-18  -H1:X1-X2  A:N
B:L+  -K1:31-34  -A1:I1-COM  B:L-
`;
    const read = readCircuit(text);
    if (!read.ok)
      throw new Error(
        told(read.problems)
          .map(({ message }) => message)
          .join('\n'),
      );
    const acts = readActs('press -S1; release -S1; make -B1; wait 6 s', read.value);
    if (!acts.ok) throw new Error('acts');
    const [found] = accept(
      {
        family: 'test',
        circuit: read.value,
        scenario: { start: 'live', faults: [], acts: acts.value },
        others: [],
        lamps: ['-H1'],
        inputs: ['-A1:I1'],
        relays: ['-K1', '-K2'],
        ends: 'steady',
      },
      { plain: true, judged: 1 },
    );
    if (found?.kind !== 'accepted') throw new Error(JSON.stringify(found));
    expect(featuresOf(found)).toMatchObject({
      levels: 2,
      contacts: 1.5,
      parallel: 1,
      elsewhere: 2,
      memories: 1,
      timers: 1,
      acts: 4,
      faults: 0,
      asked: 4,
    });
  });
});
