/** Draws the pictures of an installed page from the icon: `npm run -s icons`. Devices that take no SVG want them. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { launch } from './support/chromium.ts';

const folder = resolve(fileURLToPath(import.meta.url), '../../../src/web/public');
const icon = readFileSync(join(folder, 'icon.svg'), 'utf8');
const paper = icon.match(/<rect[^>]*fill="(#[0-9a-f]{6})"/)?.[1];
if (!paper) throw new Error('the icon has no paper');

/** The sheet's edge: a device that cuts the icon to a shape of its own would cut it in pieces. */
const EDGE = /<path[^>]*d="M9 9h78v78H9z"\/>/;
const bare = icon.replace(EDGE, '');
if (bare === icon) throw new Error('the icon has no edge');

/** A maskable icon keeps what is within a circle of 80 % of its width. */
const WITHIN = 0.95;

const PICTURES = [
  { file: 'icon-192.png', size: 192, share: 1, of: icon },
  { file: 'icon-512.png', size: 512, share: 1, of: icon },
  { file: 'icon-maskable-192.png', size: 192, share: WITHIN, of: bare },
  { file: 'icon-maskable-512.png', size: 512, share: WITHIN, of: bare },
  { file: 'apple-touch-icon.png', size: 180, share: 1, of: bare },
] as const;

const browser = await launch();
const page = await browser.newPage();
for (const { file, size, share, of } of PICTURES) {
  const side = Math.round(size * share);
  await page.setViewportSize({ width: size, height: size });
  await page.setContent(
    `<body style="margin:0;background:${paper};height:100vh;display:grid;place-items:center">${of.replace('<svg', `<svg width="${side}" height="${side}"`)}</body>`,
  );
  writeFileSync(join(folder, file), await page.screenshot());
}
await browser.close();
console.log(`${PICTURES.length} pictures in src/web/public`);
