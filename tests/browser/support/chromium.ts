/** Finds an installed Chromium; the tests bring none of their own. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { NEVER_COMES } from '../../support/hanging.ts';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge'];
const ELSEWHERE = [
  '/snap/bin/chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

/**
 * Where a Chromium is.
 *
 * @throws Error that says how to get one
 */
export function findChromium(): string {
  const named = process.env['CHROMIUM_PATH'];
  if (named !== undefined) {
    if (existsSync(named)) return named;
    throw new Error(`CHROMIUM_PATH names ${named}, which there isn't.`);
  }
  const folders = ['/usr/bin', '/usr/local/bin', ...(process.env['PATH'] ?? '').split(':')];
  const places = [...folders.flatMap((folder) => NAMES.map((name) => join(folder, name))), ...ELSEWHERE];
  const found = places.find((place) => existsSync(place));
  if (found) return found;
  throw new Error(
    'The tests of the page need a Chromium. On Debian and Ubuntu: apt-get install chromium. Elsewhere install Chromium or Chrome, or name one: CHROMIUM_PATH=/path/to/chromium npm test',
  );
}

export const launch = (): Promise<Browser> =>
  chromium.launch({
    executablePath: findChromium(),
    timeout: NEVER_COMES,
    args: [
      '--headless',
      // Containers rarely allow the browser's own; only this project's page is opened.
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
