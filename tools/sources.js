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
 * @param {string} root
 * @param {string} place
 * @returns {string[]}
 */
function filesIn(root, place) {
  if (place === APART) return [];
  const entries = readdirSync(join(root, place), { withFileTypes: true });
  return entries.flatMap((entry) => {
    const path = join(place, entry.name);
    return entry.isDirectory() ? filesIn(root, path) : [path];
  });
}

/**
 * @param {string} root
 * @returns {string}
 */
export function digestOfSources(root = ROOT) {
  const hash = createHash('sha1');
  const files = PLACES.flatMap((place) => (/\.\w+$/.test(place) ? [place] : filesIn(root, place))).sort();
  for (const file of files) {
    const content = readFileSync(join(root, file));
    hash.update(`${file}\0${content.length}\0`).update(content);
  }
  return hash.digest('hex');
}
