/** Where in the source one of some names stands as a value. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseSync, Visitor } from 'oxc-parser';

const root = resolve(fileURLToPath(import.meta.url), '../../..');

function filesIn(folder: string): string[] {
  return readdirSync(join(root, folder)).flatMap((name) => {
    const path = `${folder}/${name}`;
    if (statSync(join(root, path)).isDirectory()) return filesIn(path);
    return /\.tsx?$/.test(name) ? [path] : [];
  });
}

/** Every file of source. */
export const sourceFiles = (): string[] => ['shared', 'src', 'tools', 'bin'].flatMap(filesIn);

export interface Naming {
  readonly name: string;
  readonly line: number;
}

/** Where a name stands as a value, or as a property's name; in types, such as `Live['meter']`, it does nothing. */
export function namingsIn(file: string, names: readonly string[]): Naming[] {
  const source = readFileSync(join(root, file), 'utf8');
  const wanted = new Set<unknown>(names);
  const types: [number, number][] = [];
  const found: [string, number][] = [];
  new Visitor({
    TSLiteralType: ({ start, end }) => types.push([start, end]),
    Literal: ({ value, start }) => {
      if (wanted.has(value)) found.push([value as string, start]);
    },
  }).visit(parseSync(file, source).program);
  return found
    .filter(([, at]) => !types.some(([start, end]) => start <= at && at < end))
    .map(([name, at]) => ({ name, line: source.slice(0, at).split('\n').length }));
}
