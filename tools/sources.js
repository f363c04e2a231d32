/** What the command line is built from, as one short text: another one as soon as a byte of it is. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

/** The file of a build that says what it was built from. */
export const BUILT_FROM = 'built-from.txt';

const PLACES = ['shared', 'src', 'package-lock.json', 'tools', 'vite.programs.config.ts'];
/** The page is built apart. */
const APART = join('src', 'web');

/**
 * @param {string} place
 * @returns {string[]}
 */
function filesIn(place) {
  if (place === APART) return [];
  const entries = readdirSync(join(ROOT, place), { withFileTypes: true });
  return entries.flatMap((entry) => {
    const path = join(place, entry.name);
    return entry.isDirectory() ? filesIn(path) : [path];
  });
}

/** @returns {string} */
export function digestOfSources() {
  const hash = createHash('sha1');
  const files = PLACES.flatMap((place) => (/\.\w+$/.test(place) ? [place] : filesIn(place))).sort();
  for (const file of files) {
    const content = readFileSync(join(ROOT, file));
    hash.update(`${file}\0${content.length}\0`).update(content);
  }
  return hash.digest('hex');
}
