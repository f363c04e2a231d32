import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { exhibits, galleryPage } from './gallery.ts';

const folder = resolve(fileURLToPath(import.meta.url), '../../../docs/gallery');
const list = exhibits();

describe('the approved pictures (npm run -s gallery makes them anew)', () => {
  it.each(list.map((exhibit) => [exhibit.file, exhibit] as const))(
    '%s is drawn as approved',
    (file, { svg }) => {
      expect(svg).toBe(readFileSync(join(folder, file), 'utf8'));
    },
  );

  it('are all shown on the page, and none is left over', () => {
    expect(readFileSync(join(folder, 'README.md'), 'utf8')).toBe(galleryPage(list));
    const kept = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.svg'),
    );
    expect(kept.sort()).toEqual(list.map(({ file }) => file).sort());
  });

  it('hold every symbol and at least ten whole drawings', () => {
    const files = list.map(({ file }) => file);
    expect(files.filter((file) => file.startsWith('drawings/')).length).toBeGreaterThanOrEqual(10);
    const symbols = readdirSync(resolve(folder, '../../src/drawing/symbols')).filter((name) =>
      name.endsWith('.symbol.ts'),
    );
    for (const name of symbols)
      expect(files, name).toContain(`symbols/${name.replace('.symbol.ts', '.svg')}`);
  });
});
