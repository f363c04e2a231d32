/** A question kind is its folder and its lines in the registries: nothing else asks for it by name. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync, Visitor } from 'oxc-parser';
import { expect, it } from 'vitest';
import { QUESTION_KINDS } from '../../shared/question-kinds.ts';

const root = resolve(fileURLToPath(import.meta.url), '../../..');

/** Where kinds are at home: their folders, and the registries in which each has its line. */
const HOME = [
  'shared/question-kinds.ts',
  'shared/questions/',
  'src/questions/kinds/',
  'src/questions/registry.ts',
  'src/questions/explain/explainers.ts',
  'src/questions/answer/readers.ts',
  'src/questions/entries.ts',
  'src/banks/blocks/kinds/',
  'src/words/en/questions/',
];

function filesIn(folder: string): string[] {
  return readdirSync(join(root, folder)).flatMap((name) => {
    const path = `${folder}/${name}`;
    if (statSync(join(root, path)).isDirectory()) return filesIn(path);
    return /\.tsx?$/.test(name) ? [path] : [];
  });
}

/** Lines in which a kind stands as a value, or as a property's name; in types, such as `Live['meter']`, it does nothing. */
function kindsIn(file: string): number[] {
  const source = readFileSync(join(root, file), 'utf8');
  const lines: number[] = [];
  const kinds = new Set<unknown>(QUESTION_KINDS);
  const types: [number, number][] = [];
  const found: number[] = [];
  new Visitor({
    TSLiteralType: ({ start, end }) => types.push([start, end]),
    Literal: ({ value, start }) => {
      if (kinds.has(value)) found.push(start);
    },
  }).visit(parseSync(file, source).program);
  for (const at of found)
    if (!types.some(([start, end]) => start <= at && at < end))
      lines.push(source.slice(0, at).split('\n').length);
  return lines;
}

it('no question kind is named outside its own places', () => {
  const files = ['shared', 'src', 'tools', 'bin'].flatMap(filesIn);
  const home = files.filter((file) => HOME.some((place) => file.startsWith(place)));
  for (const place of HOME)
    expect(
      home.some((file) => file.startsWith(place) && kindsIn(file).length > 0),
      place,
    ).toBe(true);
  const named = files
    .filter((file) => !home.includes(file))
    .flatMap((file) => kindsIn(file).map((line) => `${file}:${line}`));
  expect(named).toEqual([]);
});
