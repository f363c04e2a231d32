/** Writes the table of docs/generator.md: `npx tsx tests/generator/apart-table.ts`. Takes a minute or two. */
import { readFileSync, writeFileSync } from 'node:fs';
import { families, free } from '../../src/generator/index.ts';
import { allowed, apartOf } from './apart.ts';

const SEEDS = 500;
const FILE = new URL('../../docs/generator.md', import.meta.url);
const BEGIN = '<!-- table: written by tests/generator/apart-table.ts -->';
const END = '<!-- end of table -->';

const percent = (share: number): number => Math.round(100 * share);

const measured = [...families, free].map((family) => apartOf(family, SEEDS));
const rows = measured.map((apart) => {
  const list = allowed(apart)
    .map((id) => ({ id, made: apart.made.get(id) ?? 0, offered: apart.offered.get(id)! }))
    .sort((a, b) => b.made - a.made)
    .map(({ id, made, offered }) => `${id} ${percent(made)} (${percent(offered)})`);
  return `| ${apart.family} | ${percent(apart.accepted)} | ${apart.drafts.toFixed(1)} | ${apart.told.toFixed(1)} | ${apart.answers.toFixed(1)} | ${list.join(', ')} |`;
});
const pairs = measured.flatMap((apart) =>
  allowed(apart).map((id) => ({ made: apart.made.get(id) ?? 0, offered: apart.offered.get(id)! })),
);
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
const table = [
  BEGIN,
  `Over ${SEEDS} seeds a family. Of ${pairs.length} pairs of a family and a misconception that it allows, a question made`,
  `tells one apart in ${percent(mean(pairs.map(({ made }) => made)))} % of cases; scenarios as they come would in ${percent(mean(pairs.map(({ offered }) => offered)))} %.`,
  '',
  '| family | scenarios accepted % | drafts a question | told apart | wrong answers | % of questions that tell each apart (in brackets: of scenarios as they come) |',
  '|---|---|---|---|---|---|',
  ...rows,
  END,
].join('\n');
const text = readFileSync(FILE, 'utf8');
const [before, rest] = text.split(BEGIN);
const after = rest?.split(END)[1];
if (before === undefined || after === undefined)
  throw new Error('docs/generator.md has no place for the table');
writeFileSync(FILE, `${before}${table}${after}`);
