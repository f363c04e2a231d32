/** `npm run bench`: every benchmark, as a table or with `--json`. Name some to run only those: `npm run bench -- solver`. */

import { type Held, heldAgainst } from './held.ts';
import { Reference } from './reference.ts';
import type { Row } from './row.ts';

const benches: Readonly<Record<string, () => Promise<readonly Row[]> | readonly Row[]>> = {
  solver: async () => (await import('./solver.bench.ts')).bench(),
  generator: async () => (await import('./generator.bench.ts')).generatorBench(),
  drawing: async () => (await import('./drawing.bench.ts')).bench(),
  memory: async () =>
    (await import('./memory.bench.ts'))
      .memoryRows()
      .map(({ name, median, unit }) => ({ name, value: median, unit })),
  homework: async () => (await import('./homework.bench.ts')).bench(),
  'homework-load': async () => (await import('./homework-load.ts')).loadBench(),
  beside: async () => (await import('./beside.bench.ts')).bench(),
  'signing-in': async () => (await import('./signing-in.bench.ts')).bench(),
  server: async () => (await import('./server.bench.ts')).bench(),
  'new-device': async () => (await import('./new-device.bench.ts')).bench(),
  commands: async () => (await import('./commands.bench.ts')).bench(),
  page: async () => (await import('./page.bench.ts')).bench(),
};

const words = process.argv.slice(2);
const json = words.includes('--json');
const wanted = words.filter((word) => !word.startsWith('-'));
const unknown = wanted.filter((name) => !(name in benches));
if (unknown.length > 0) {
  process.stderr.write(
    `There is no benchmark ${unknown.join(', ')}. There are ${Object.keys(benches).join(', ')}.\n`,
  );
  process.exit(2);
}
const reference = new Reference();
reference.take();
const measured: (Row & { readonly bench: string })[] = [];
for (const [name, run] of Object.entries(benches)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  if (!json) process.stderr.write(`${name}…\n`);
  for (const row of await run()) measured.push({ bench: name, ...row });
  reference.take();
}
const { speed } = reference;
const rows = measured.map((row) => ({ ...row, ...heldAgainst(row, speed) }));
const number = (value: number): string => String(Number(value.toPrecision(4)));
const limitOf = ({ bound, here, kept }: Row & Held): string => {
  if (bound === undefined || here === undefined) return '';
  return `  (bound ${number(bound)}${here === bound ? '' : `, here ${number(here)}`}${kept ? '' : ': NOT KEPT'})`;
};
if (json) process.stdout.write(`${JSON.stringify({ speed, rows }, null, 2)}\n`);
else {
  for (const row of rows) {
    const { bench, name, value, unit, peer, ratio } = row;
    const beside =
      peer === undefined || ratio === undefined ? '' : `  ${Math.round(ratio)} times faster than ${peer}`;
    process.stdout.write(
      `${bench.padEnd(10)} ${name.padEnd(64)} ${number(value).padStart(9)} ${unit}${limitOf(row)}${beside}\n`,
    );
  }
  process.stdout.write(
    `The machine was ${number(speed.slower)} times slower than the one that bounds are meant for; equal pieces of work differed by ${Math.round(speed.noise * 100)} %.\n`,
  );
}
process.exit(rows.some(({ kept }) => !kept) ? 1 : 0);
