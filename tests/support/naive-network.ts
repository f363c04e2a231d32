/** A resistive network solved the plainest way: nodal equations with the sources as unknown currents, Gauss elimination. */
import { netsOf, type Wiring } from './wiring.ts';

/** So that what hangs free has a potential at all. */
const LEAK = 1e-10;

/** Potential of every terminal against an arbitrary ground, of one part of the voltages. Not for short-circuited wiring. */
export function nodeVolts(wiring: Wiring, part: 'direct' | 're' | 'im' = 'direct'): Map<string, number> {
  const netOf = netsOf(wiring);
  const number = new Map<string, number>();
  const earths = new Set(wiring.earths.map(netOf));
  for (const terminal of wiring.terminals) {
    const net = netOf(terminal);
    if (!earths.has(net) && !number.has(net)) number.set(net, number.size);
  }
  const nets = number.size;
  const at = (terminal: string): number => number.get(netOf(terminal)) ?? -1;
  // Sources in parallel with others say nothing new and would leave the matrix singular.
  const parent = Int32Array.from({ length: nets + 1 }, (_, index) => index);
  const root = (index: number): number => {
    let here = index < 0 ? nets : index;
    while (parent[here] !== here) here = parent[here]!;
    return here;
  };
  const sources = wiring.sources.filter(({ plus, minus }) => {
    const [a, b] = [root(at(plus)), root(at(minus))];
    if (a === b) return false;
    parent[a] = b;
    return true;
  });
  const size = nets + sources.length;
  const rows = Array.from({ length: size }, () => new Float64Array(size + 1));
  const add = (row: number, column: number, value: number): void => {
    if (row >= 0 && column >= 0) rows[row]![column] = rows[row]![column]! + value;
  };
  for (let net = 0; net < nets; net++) add(net, net, LEAK);
  for (const { from, to, ohms } of wiring.resistors) {
    const [a, b] = [at(from), at(to)];
    if (a === b) continue;
    add(a, a, 1 / ohms);
    add(b, b, 1 / ohms);
    add(a, b, -1 / ohms);
    add(b, a, -1 / ohms);
  }
  sources.forEach(({ plus, minus, [part]: volts }, index) => {
    const row = nets + index;
    add(at(plus), row, 1);
    add(at(minus), row, -1);
    add(row, at(plus), 1);
    add(row, at(minus), -1);
    rows[row]![size] = volts;
  });
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let row = column + 1; row < size; row++)
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = row;
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    for (let row = 0; row < size; row++) {
      const factor = row === column ? 0 : rows[row]![column]! / rows[column]![column]!;
      if (factor === 0) continue;
      for (let index = column; index <= size; index++)
        rows[row]![index] = rows[row]![index]! - factor * rows[column]![index]!;
    }
  }
  return new Map(
    wiring.terminals.map((terminal) => {
      const net = at(terminal);
      return [terminal, net < 0 ? 0 : rows[net]![size]! / rows[net]![net]!];
    }),
  );
}
