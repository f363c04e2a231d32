/** What browsers ask of a page that can be installed; the sizes are those of the Web App Manifest's common practice. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const folder = 'src/web/public';

interface Manifest {
  readonly name: string;
  readonly start_url: string;
  readonly display: string;
  readonly icons: readonly { src: string; sizes: string; type: string; purpose: string }[];
}

const manifest = JSON.parse(readFileSync(join(folder, 'manifest.webmanifest'), 'utf8')) as Manifest;

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
    expect(manifest.name).toMatch(/^Polewise/);
  });
});

it('the page names a touch icon of the size that it has', () => {
  expect(readFileSync('src/web/index.html', 'utf8')).toContain('href="/apple-touch-icon.png"');
  expect(sizeOf('apple-touch-icon.png')).toBe('180x180');
});
