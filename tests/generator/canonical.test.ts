import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { formOf } from '../../src/generator/canonical/canonical-form.ts';
import { incidenceOf } from '../../src/generator/incidence.ts';
import {
  canonicalForm,
  families,
  fingerprint,
  free,
  type Random,
  randomOf,
} from '../../src/generator/index.ts';
import { circuitOf } from '../support/written.ts';
import {
  beside,
  caiFuererImmerman,
  complete,
  type Edges,
  ofBits,
  projectivePlane,
  reordered,
  rooks,
  shrikhande,
} from './hard-graphs.ts';
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

const textOf = (circuit: Circuit): string => {
  const { whole, text } = canonicalForm(circuit);
  expect(whole).toBe(true);
  return text;
};

describe('the canonical form of a circuit', () => {
  it('stays when devices and supplies are renamed, paths, poles, devices and sheets reordered, texts and colours changed', () => {
    fc.assert(
      fc.property(circuits(8), ({ circuit, random }) => {
        expect(textOf(rewritten(random, circuit))).toBe(textOf(circuit));
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
        expect(textOf(other) === textOf(circuit)).toBe(same);
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
    const two = textOf(write([1, 2, 3], [4, 5, 6]));
    expect(two).not.toBe(textOf(write([1, 2, 3, 4, 5, 6])));
    expect(two).toBe(textOf(write([1, 4, 2], [6, 3, 5])));
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

  it('is found where every conductor is joined to every other by a lamp, in whatever order they are written', () => {
    const net = (poles: number, random: Random): Circuit => {
      const nodes = random.shuffle(Array.from({ length: poles }, (_, at) => at + 1));
      const lamps = nodes.flatMap((one, at) => nodes.slice(0, at).map((other) => [one, other] as const));
      const lines = [
        'supply A 24 V AC',
        `-X1 terminals ${poles}`,
        ...lamps.map((_, at) => `-H${at + 1} lamp`),
        `A:L  -X1:${nodes[0]}`,
        ...random.shuffle(lamps.map(([one, other], at) => `-X1:${one}  -H${at + 1}:X1-X2  -X1:${other}`)),
      ];
      return circuitOf(`${lines.join('\n')}\n`);
    };
    const print = fingerprint(net(12, randomOf('net')));
    expect(print).toMatch(/^[0-9a-f]{32}$/);
    for (const seed of ['a', 'b', 'c']) expect(fingerprint(net(12, randomOf(seed)))).toBe(print);
    expect(fingerprint(net(11, randomOf('net')))).not.toBe(print);
  });
});

describe('the canonical form of a graph', () => {
  const wholeOf = (edges: Edges): string => {
    const { whole, text } = formOf({ kinds: edges.map(() => 'vertex'), edges });
    expect(whole).toBe(true);
    return text;
  };
  const anyOrder = (edges: Edges, seed: string): Edges =>
    reordered(edges, randomOf(seed).shuffle(edges.map((_, vertex) => vertex)));

  it('tells apart all graphs of up to six vertices, and no more: 1, 2, 4, 11, 34, 156 of them', () => {
    // OEIS A000088, the number of graphs on n unlabelled nodes.
    for (const [index, known] of [1, 2, 4, 11, 34, 156].entries()) {
      const size = index + 1;
      const forms = new Set<string>();
      for (let bits = 0; bits < 2 ** ((size * (size - 1)) / 2); bits++)
        forms.add(formOf({ kinds: Array(size).fill('vertex'), edges: ofBits(size, bits) }).text);
      expect(forms.size).toBe(known);
    }
  });

  it.each<readonly [string, Edges]>([
    ['complete, of 40', complete(40)],
    ['strongly regular, rooks on a board of eight by eight', rooks(8)],
    ['strongly regular, Shrikhande', shrikhande()],
    ['thirty copies of one strongly regular graph', beside(...Array.from({ length: 30 }, shrikhande))],
    ['of Cai, Fürer and Immerman, straight', caiFuererImmerman(12, false)],
    ['of Cai, Fürer and Immerman, twisted', caiFuererImmerman(12, true)],
    ['a projective plane of order 3', projectivePlane(3)],
  ])('is the same whatever the order of its vertices: %s', (_, edges) => {
    const form = wholeOf(edges);
    for (const seed of ['one', 'two', 'three']) expect(wholeOf(anyOrder(edges, seed))).toBe(form);
  });

  it('tells apart what refining alone does not', () => {
    expect(wholeOf(rooks(4))).not.toBe(wholeOf(shrikhande()));
    expect(wholeOf(beside(rooks(4), shrikhande()))).toBe(wholeOf(beside(shrikhande(), rooks(4))));
    expect(wholeOf(beside(rooks(4), rooks(4)))).not.toBe(wholeOf(beside(rooks(4), shrikhande())));
    expect(wholeOf(caiFuererImmerman(12, false))).not.toBe(wholeOf(caiFuererImmerman(12, true)));
  });

  it('says where it takes too much effort, and is the same for the same graph even then', () => {
    const plane = projectivePlane(11);
    const formed = (edges: Edges) => formOf({ kinds: edges.map(() => 'vertex'), edges });
    expect(formed(plane).whole).toBe(false);
    for (const seed of ['one', 'two']) expect(formed(anyOrder(plane, seed))).toEqual(formed(plane));
    expect(formed(projectivePlane(7)).text).not.toBe(formed(plane).text);
  });

  it('goes no further than the effort that it is allowed', () => {
    const kinds = Array(16).fill('vertex');
    const edges = shrikhande();
    const least = (fits: (most: number) => boolean): number => {
      let most = 1;
      while (!fits(most)) most *= 2;
      return most;
    };
    const needed = least((most) => formOf({ kinds, edges }, most).whole);
    expect(needed).toBeGreaterThan(100);
    expect(formOf({ kinds, edges }, needed)).toEqual(formOf({ kinds, edges }));
    expect(formOf({ kinds, edges }, needed / 2).whole).toBe(false);
  });
});
