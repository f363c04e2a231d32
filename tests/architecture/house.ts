/** The source files of the house, and what each imports: types as well as what is there when the program runs. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = resolve(fileURLToPath(import.meta.url), '../../..');

function filesIn(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return filesIn(path);
    return /\.tsx?$/.test(name) ? [path] : [];
  });
}

export const files: readonly string[] = ['shared', 'src']
  .flatMap((folder) => filesIn(join(root, folder)))
  .map((path) => relative(root, path));

export const textOf = (file: string): string => readFileSync(join(root, file), 'utf8');

/** Specifiers of static and dynamic imports and re-exports. */
export const importsOf = (file: string): string[] =>
  [...textOf(file).matchAll(/(?:\bfrom\s*|\bimport\s*\(?\s*)['"]([^'"]+)['"]/g)].map((match) => match[1]!);

/** The files of the house that one imports. */
export const localImports = (file: string): string[] =>
  importsOf(file)
    .filter((specifier) => specifier.startsWith('.'))
    .map((specifier) => relative(root, resolve(root, dirname(file), specifier)));
