/**
 * Runs the command line of this folder: as it was built, where it was built from just these sources, and otherwise from the
 * sources themselves, which takes longer to begin.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { BUILT_FROM, digestOfSources, ROOT } from './sources.js';

const program = join(ROOT, 'dist', 'program');
const said = join(program, BUILT_FROM);

if (existsSync(said) && readFileSync(said, 'utf8') === digestOfSources())
  await import(pathToFileURL(join(ROOT, 'bin', 'polewise.js')).href);
else {
  const { register } = await import('tsx/esm/api');
  register();
  await import(pathToFileURL(join(ROOT, 'src', 'cli', 'main.ts')).href);
}
