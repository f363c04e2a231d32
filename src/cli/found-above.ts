import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The nearest file or folder of that name, from where the program is upwards: it runs from its source, or built in `dist/`. */
export function foundAbove(name: string): string | undefined {
  let folder = dirname(fileURLToPath(import.meta.url));
  for (let up = 0; up < 5; up++) {
    const path = join(folder, name);
    if (existsSync(path)) return path;
    folder = dirname(folder);
  }
  return undefined;
}
