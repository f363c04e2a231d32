/** What browsers ask of a page that can be installed; the sizes are those of the Web App Manifest's common practice. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { document } from '../../src/words/en/page/document.ts';
import { builtPage } from '../support/built.ts';

const folder = 'src/web/public';
let built: string;

interface Manifest {
  readonly name: string;
  readonly start_url: string;
  readonly display: string;
  readonly icons: readonly { src: string; sizes: string; type: string; purpose: string }[];
}

let manifest: Manifest;
beforeAll(async () => {
  built = await builtPage();
  manifest = JSON.parse(readFileSync(join(built, 'manifest.webmanifest'), 'utf8')) as Manifest;
});

/** Width and height as the PNG's header has them (ISO/IEC 15948, 11.2.2). */
function sizeOf(file: string): string {
  const bytes = readFileSync(join(folder, file));
  expect(bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
  return `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`;
}

describe('the manifest', () => {
  it('has pictures for devices that take no SVG, of the sizes it says', () => {
    const pictures = manifest.icons.filter(({ type }) => type === 'image/png');
    for (const { src, sizes } of pictures) expect(sizeOf(src), src).toBe(sizes);
    for (const purpose of ['any', 'maskable'])
      expect(pictures.filter((icon) => icon.purpose === purpose).map(({ sizes }) => sizes)).toEqual([
        '192x192',
        '512x512',
      ]);
  });

  it('opens the page by itself, from its own address', () => {
    expect(manifest).toMatchObject({ start_url: '/', display: 'standalone' });
    expect(manifest).toMatchObject({ ...document.installed, lang: 'en', short_name: 'Polewise' });
  });
});

it('the page says in its language what it is, and what it needs where no script runs', () => {
  const html = readFileSync(join(built, 'index.html'), 'utf8');
  expect(html).toContain('<html lang="en">');
  expect(html).toContain(`<meta name="description" content="${document.description}">`);
  expect(html).toContain(`<noscript>${document.noScript}</noscript>`);
  expect(html).toContain('<link rel="manifest" href="/manifest.webmanifest">');
  expect(html).not.toContain('{{');
  // Without network it is there too.
  expect(readFileSync(join(built, 'service-worker.js'), 'utf8')).toContain('"/manifest.webmanifest"');
});

it('the page names a touch icon of the size that it has', () => {
  expect(readFileSync('src/web/index.html', 'utf8')).toContain('href="/apple-touch-icon.png"');
  expect(sizeOf('apple-touch-icon.png')).toBe('180x180');
});
