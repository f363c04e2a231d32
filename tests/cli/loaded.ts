/** What a program loads when it runs: its own modules by their sources, and packages by their names. */
import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

export interface Loaded {
  /** As `src/cli/program.ts`. */
  readonly modules: readonly string[];
  readonly packages: readonly string[];
  readonly printed: string;
}

const asModule = (code: string): string => `data:text/javascript,${encodeURIComponent(code)}`;

/** Writes down every file that is imported, before anything of it runs. */
const listing = (list: string): string => {
  const hooks = asModule(`
    import { appendFileSync } from 'node:fs';
    export const load = (url, context, next) => {
      appendFileSync(${JSON.stringify(list)}, url + '\\n');
      return next(url, context);
    };
  `);
  return asModule(`import { register } from 'node:module'; register(${JSON.stringify(hooks)});`);
};

const PACKAGE = /.*node_modules\/((?:@[^/]+\/)?[^/]+)/;

/** A build names in each of its files the modules it put into it, each on a line before its code. */
const modulesIn = (file: string): string[] =>
  [...readFileSync(file, 'utf8').matchAll(/^\/\/ ((?:src|shared|node_modules)\/\S+)$/gm)].map(
    ([, name]) => name!,
  );

export async function loadedBy(program: string, words: readonly string[]): Promise<Loaded> {
  const folder = mkdtempSync(join(tmpdir(), 'polewise-loaded-'));
  const list = join(folder, 'list');
  try {
    const run = await promisify(execFile)(process.execPath, ['--import', listing(list), program, ...words]);
    const urls = readFileSync(list, 'utf8')
      .split('\n')
      .filter((url) => url.startsWith('file:'));
    const ofParts = (url: string): boolean => !PACKAGE.test(url) || url.includes('/.polewise-');
    const found = urls.filter(ofParts).flatMap((url) => modulesIn(fileURLToPath(url)));
    const packages = [...urls.filter((url) => !ofParts(url)), ...found].flatMap(
      (name) => PACKAGE.exec(name)?.[1] ?? [],
    );
    return {
      modules: found.filter((name) => !name.startsWith('node_modules/')).sort(),
      packages: [...new Set(packages)].sort(),
      printed: run.stdout,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
