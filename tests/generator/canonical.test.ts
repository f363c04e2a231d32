import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { readCircuit } from '../../src/circuit/index.ts';
import { incidenceOf } from '../../src/generator/incidence.ts';
import {
  canonicalForm,
  families,
  fingerprint,
  free,
  type Random,
  randomOf,
} from '../../src/generator/index.ts';
import { isomorphic } from './isomorphism.ts';
import { changed, rewritten } from './renaming.ts';

const all = [...families, free];
const circuits = (most: number): fc.Arbitrary<{ circuit: Circuit; random: Random; seed: number }> =>
  fc
    .record({
      family: fc.constantFrom(...all),
      seed: fc.nat(1_000_000),
      size: fc.integer({ min: 1, max: most }),
    })
    .map(({ family, seed, size }) => {
      const fitting = Math.min(size, family.size.max);
      return {
        circuit: family.draft(randomOf(`canonical-${seed}`), { size: fitting }).circuit,
        random: randomOf(`rewrite-${seed}`),
        seed,
      };
    });

const circuitOf = (text: string): Circuit => {
  const read = readCircuit(text);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.value;
};

describe('the canonical form of a circuit', () => {
  it('stays when devices and supplies are renamed, paths, poles, devices and sheets reordered, texts and colours changed', () => {
    fc.assert(
      fc.property(circuits(8), ({ circuit, random }) => {
        expect(canonicalForm(rewritten(random, circuit))).toBe(canonicalForm(circuit));
      }),
      { numRuns: 250 },
    );
  });

  it('is equal for two circuits exactly when one can be laid on the other', () => {
    const seen = { same: 0, different: 0 };
    fc.assert(
      fc.property(circuits(3), ({ circuit, random }) => {
        const other = rewritten(random, changed(random, circuit));
        const same = isomorphic(incidenceOf(circuit), incidenceOf(other));
        seen[same ? 'same' : 'different']++;
        expect(canonicalForm(other) === canonicalForm(circuit)).toBe(same);
      }),
      { numRuns: 300 },
    );
    expect(seen.different).toBeGreaterThan(200);
  });

  it('tells apart what colours alone cannot: two rings of three relays and one ring of six', () => {
    const ring = (members: readonly number[]): string =>
      members
        .map((relay, index) => `A:L  -K${relay}:11-14  -K${members[(index + 1) % members.length]}:A1-A2  A:N`)
        .join('\n');
    const devices = [1, 2, 3, 4, 5, 6].map((relay) => `-K${relay} relay`).join('\n');
    const write = (...rings: (readonly number[])[]) =>
      circuitOf(`supply A 24 V AC\n${devices}\n${rings.map(ring).join('\n')}\n`);
    const two = canonicalForm(write([1, 2, 3], [4, 5, 6]));
    expect(two).not.toBe(canonicalForm(write([1, 2, 3, 4, 5, 6])));
    expect(two).toBe(canonicalForm(write([1, 4, 2], [6, 3, 5])));
  });

  it('tells one leg from the other, one kind from another, one rating from another, and an unused pole from none', () => {
    const text = (relay: string, leg: string, sensor: string) =>
      `supply A 24 V AC\n-B1 ${sensor}\n-K1 relay ${relay}\n-H1 lamp\nA:L  -B1:13-14  -K1:A1-A2  A:N\nA:L  -K1:11-${leg}  -H1:X1-X2  A:N\n`;
    const forms = [
      text('1 pole', '12', 'field-contact make'),
      text('1 pole', '14', 'field-contact make'),
      text('2 poles', '14', 'field-contact make'),
      text('1 pole 48 V AC', '14', 'field-contact make'),
      text('1 pole', '14', 'float-switch make'),
    ].map((each) => fingerprint(circuitOf(each)));
    expect(new Set(forms).size).toBe(forms.length);
  });

  it('is done in reasonable steps where many branches are alike', () => {
    const branches = Array.from({ length: 40 }, (_, index) => index + 1);
    const text = `supply A 24 V AC\n${branches.map((at) => `-B${at} field-contact make\n-H${at} lamp`).join('\n')}\n${branches.map((at) => `A:L  -B${at}:13-14  -H${at}:X1-X2  A:N`).join('\n')}\n`;
    expect(fingerprint(circuitOf(text))).toMatch(/^[0-9a-f]{32}$/);
  });
});
