/**
 * How many accepted questions a second of one core, misconceptions included: every family and free circuits, all sizes in
 * equal parts. Measured in processor time of the whole process, so that what else the machine does counts little.
 */
import { formOf } from '../../src/generator/canonical/canonical-form.ts';
import { families, fingerprint, free, generate } from '../../src/generator/index.ts';
import { caiFuererImmerman, complete, type Edges, projectivePlane } from '../generator/hard-graphs.ts';

export interface Row {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** What the figure has to reach. */
  readonly bound?: number;
}

const all = [...families, free];
const requests = all.flatMap(({ id, size: { min, max } }) =>
  Array.from({ length: max - min + 1 }, (_, index) => ({ family: id, size: min + index })),
);

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** Milliseconds of processor time since `from`. */
const spent = (from: NodeJS.CpuUsage): number => {
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
};

/** Accepted questions a second over one round of `requests`. */
function round(number: number, of: typeof requests): number {
  const from = process.cpuUsage();
  let accepted = 0;
  for (const request of of) if (generate({ ...request, seed: `bench-${number}` }).ok) accepted++;
  return (1000 * accepted) / spent(from);
}

export async function generatorBench(rounds = 15): Promise<readonly Row[]> {
  for (let warm = 0; warm < 4; warm++) round(-1 - warm, requests);
  const whole = Array.from({ length: rounds }, (_, number) => round(number, requests));
  const rows: Row[] = [
    { name: 'accepted questions', value: Math.round(median(whole)), unit: 'per second', bound: 300 },
  ];
  for (const { id } of all) {
    const own = requests.filter(({ family }) => family === id);
    const rates = Array.from({ length: 5 }, (_, number) => round(number, own));
    rows.push({ name: `accepted questions, ${id}`, value: Math.round(median(rates)), unit: 'per second' });
  }
  const circuits = requests.flatMap((request) => {
    const made = generate({ ...request, seed: 'bench' });
    return made.ok ? [made.accepted.draft.circuit] : [];
  });
  const each = Array.from({ length: 31 }, () => {
    const from = process.cpuUsage();
    for (const circuit of circuits) fingerprint({ ...circuit });
    return spent(from) / circuits.length;
  });
  rows.push({
    name: 'fingerprint of a circuit',
    value: Math.round(median(each) * 1000),
    unit: 'microseconds',
  });
  const hard: readonly (readonly [string, Edges])[] = [
    ['where 40 conductors are each joined to each', complete(40)],
    ['of Cai, Fürer and Immerman, 120 vertices', caiFuererImmerman(12, true)],
    ['that takes more than is allowed (plane of order 11)', projectivePlane(11)],
  ];
  for (const [name, edges] of hard) {
    const begun = process.cpuUsage();
    formOf({ kinds: edges.map(() => 'vertex'), edges });
    rows.push({ name: `canonical form of a graph ${name}`, value: spent(begun), unit: 'ms' });
  }
  return rows;
}
