/** Writes docs/gallery anew: `npm run -s gallery`. */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { exhibits, galleryPage } from './gallery.ts';

const folder = resolve(fileURLToPath(import.meta.url), '../../../docs/gallery');
const list = exhibits();
rmSync(folder, { recursive: true, force: true });
for (const { file, svg } of list) {
  const path = join(folder, file);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, svg);
}
writeFileSync(join(folder, 'README.md'), galleryPage(list));
console.log(`${list.length} pictures in docs/gallery`);
