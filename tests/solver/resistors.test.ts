/** Potentials of networks of resistors against Gaussian elimination, which knows no shortcuts and no order. */
import { describe, expect, it } from 'vitest';
import { randomOf } from '../../src/generator/random.ts';
import { type Resistors, solveResistors } from '../../src/solver/star-mesh.ts';

/** Solves rows of `coefficients … right` by elimination with pivots; each row is one equation. */
function gauss(rows: number[][]): number[] {
  const size = rows.length;
  for (let column = 0; column < size; column++) {
    const best = rows.findIndex(
      (row, index) =>
        index >= column &&
        Math.abs(row[column]!) === Math.max(...rows.slice(column).map((one) => Math.abs(one[column]!))),
    );
    [rows[column], rows[best]] = [rows[best]!, rows[column]!];
    const pivot = rows[column]!;
    rows.forEach((row, index) => {
      if (index === column || row[column] === 0) return;
      const factor = row[column]! / pivot[column]!;
      row.forEach((value, at) => {
        row[at] = value - factor * pivot[at]!;
      });
    });
  }
  return rows.map((row, index) => row[size]! / row[index]!);
}

/** Potentials along one axis, one equation a node: it is held, or what flows into it is nothing. */
function expected(
  { a, b, siemens, extra }: Resistors,
  held: ReadonlyMap<number, number>,
  nodes: number,
  axis: number,
) {
  const rows = Array.from({ length: nodes }, () => Array.from({ length: nodes + 1 }, () => 0));
  a.forEach((from, index) => {
    const to = b[index]!;
    const g = siemens[index]!;
    const volts = extra?.[axis]?.[index] ?? 0;
    for (const [node, other, sign] of [
      [from, to, -1],
      [to, from, 1],
    ] as const) {
      rows[node]![node]! += g;
      rows[node]![other]! -= g;
      rows[node]![nodes]! += sign * g * volts;
    }
  });
  for (const [node, volts] of held)
    rows[node] = rows[node]!.map((_, at) => (at === node ? 1 : at === nodes ? volts : 0));
  return gauss(rows);
}

const solved = (
  resistors: Resistors,
  held: ReadonlyMap<number, readonly number[]>,
  nodes: number,
  axes = 1,
) => {
  const volts = Array.from({ length: axes }, (_, axis) => {
    const along = new Float64Array(nodes);
    for (const [node, given] of held) along[node] = given[axis]!;
    return along;
  });
  const { floating } = solveResistors(resistors, (node) => held.has(node), volts);
  return { volts, floating: [...floating].sort((one, other) => one - other) };
};

/** Resistors between these nodes, each on every other one. */
const everyPair = (nodes: number, siemens: (one: number, other: number) => number): Resistors => {
  const pairs = Array.from({ length: nodes }, (_, one) => one).flatMap((one) =>
    Array.from({ length: one }, (_, other) => [one, other] as const),
  );
  return {
    a: pairs.map(([one]) => one),
    b: pairs.map(([, other]) => other),
    siemens: pairs.map(([one, other]) => siemens(one, other)),
  };
};

describe('the potentials of a network of resistors', () => {
  it('are those of Gaussian elimination, with two axes, volts in series with resistors, and several nodes held', () => {
    for (let index = 0; index < 60; index++) {
      const random = randomOf(`resistors ${index}`);
      const nodes = random.int(4, 12);
      const number = random.int(nodes, 3 * nodes);
      // A way through all nodes, so that every potential is given, and others across it.
      const ends = Array.from({ length: number }, (_, at) =>
        at < nodes - 1 ? [at, at + 1] : [random.int(0, nodes - 1), random.int(0, nodes - 1)],
      );
      const some = () => ends.map(() => (random.chance(0.3) ? random.int(-50, 50) : 0));
      const resistors: Resistors = {
        a: ends.map(([one]) => one!),
        b: ends.map(([, other]) => other!),
        siemens: ends.map(([one, other]) => (one === other ? 1 : random.int(1, 1000) / 100)),
        extra: [some(), some()],
      };
      const held = new Map([
        [random.int(0, nodes - 1), [24, 0]],
        [random.int(0, nodes - 1), [0, 230]],
      ]);
      const { volts, floating } = solved(resistors, held, nodes, 2);
      expect(floating).toEqual([]);
      for (const axis of [0, 1]) {
        const along = new Map([...held].map(([node, given]) => [node, given[axis]!] as const));
        const right = expected(resistors, along, nodes, axis);
        for (let node = 0; node < nodes; node++)
          expect(volts[axis]![node], `resistors ${index}, node ${node}`).toBeCloseTo(right[node]!, 6);
      }
    }
  });

  it('are the same where every node hangs on more than fifty others, with currents driven inside', () => {
    const random = randomOf('many');
    const nodes = 70;
    const resistors = everyPair(nodes, () => random.int(1, 1000) / 100);
    const extra = [resistors.a.map(() => (random.chance(0.01) ? random.int(-50, 50) : 0))];
    const held = new Map([
      [0, 24],
      [1, 0],
    ]);
    const given = new Map([...held].map(([node, volts]) => [node, [volts]] as const));
    const { volts, floating } = solved({ ...resistors, extra }, given, nodes);
    const right = expected({ ...resistors, extra }, held, nodes, 0);
    expect(floating).toEqual([]);
    for (let node = 0; node < nodes; node++)
      expect(volts[0]![node], `node ${node}`).toBeCloseTo(right[node]!, 6);
  });

  it('of parts on no held node are against one of their own nodes, and such parts are told', () => {
    // Node 0 at 24 V on node 1; nodes 2 to 4 on one another, 12 V in series with one of their resistors.
    const few = { a: [0, 2, 3, 2], b: [1, 3, 4, 4], siemens: [1, 1, 1, 1], extra: [[0, 12, 0, 0]] };
    const { volts, floating } = solved(few, new Map([[0, [24]]]), 5);
    expect(floating).toEqual([2, 3, 4]);
    expect(volts[0]![1]).toBeCloseTo(24, 9);
    // Three equal resistors around 12 V: 4 V across each, so that 2 lies 8 V over 3 less the 12 V in between.
    expect(volts[0]![3]! - volts[0]![2]!).toBeCloseTo(8, 9);
    expect(volts[0]![4]! - volts[0]![2]!).toBeCloseTo(4, 9);
  });

  it('of a large part on no held node, beside one that is held, are told likewise', () => {
    const nodes = 60;
    const large = everyPair(nodes, () => 1);
    const both: Resistors = {
      a: [...large.a, ...large.a.map((node) => node + nodes)],
      b: [...large.b, ...large.b.map((node) => node + nodes)],
      siemens: [...large.siemens, ...large.siemens],
    };
    const { volts, floating } = solved(
      both,
      new Map([
        [0, [24]],
        [1, [0]],
      ]),
      2 * nodes,
    );
    expect(floating).toEqual(Array.from({ length: nodes }, (_, node) => node + nodes));
    // By symmetry every other node of the first lies half way, and nothing drives a current in the second.
    for (let node = 2; node < nodes; node++) expect(volts[0]![node]).toBeCloseTo(12, 9);
    for (let node = nodes; node < 2 * nodes; node++) expect(volts[0]![node]).toBeCloseTo(0, 9);
  });
});
