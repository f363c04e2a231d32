/**
 * What somebody with a long history waits for on a new device: a phone with a processor four times slowed, on a slow mobile
 * network. The question is looked at: it has to be the one that is due.
 */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { createServer } from '../../src/server/index.ts';
import { openStore, storeFile } from '../../src/store/index.ts';
import { english } from '../../src/words/en/core.ts';
import { launch } from '../browser/support/chromium.ts';
import { buildPage } from '../support/build-page.ts';
import { LOST, longHistory } from '../support/long-history.ts';
import { ownBank } from '../support/own-bank.ts';
import type { Row } from './row.ts';

const SLOWED = 4;
/** 1.6 Mbit/s down, 750 kbit/s up, 150 ms there and back. */
const NETWORK = { offline: false, latency: 150, downloadThroughput: 200_000, uploadThroughput: 94_000 };

/** What is in the device's store: the open question's skill, how many answers are here in short and whole. */
const LOOK = `new Promise((resolve) => {
  const opening = indexedDB.open('polewise');
  opening.onsuccess = () => {
    const reading = opening.result.transaction(['values', 'lines', 'answers']);
    const open = reading.objectStore('values').get('open');
    const lines = reading.objectStore('lines').count();
    const whole = reading.objectStore('answers').count();
    reading.oncomplete = () => {
      opening.result.close();
      resolve({ skill: open.result?.task.skill, lines: lines.result, whole: whole.result });
    };
  };
})`;
const DRAWN = "Boolean(document.querySelector('.question .lines img')?.complete)";

const storeOf = (page: Page) => page.evaluate<{ skill: string; lines: number; whole: number }>(LOOK);

async function opened(browser: Browser, address: string, count: number): Promise<Row[]> {
  const context = await browser.newContext({
    viewport: { width: 360, height: 740 },
    isMobile: true,
    hasTouch: true,
  });
  const page = await context.newPage();
  page.setDefaultTimeout(600_000);
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  await session.send('Network.enable');
  await session.send('Network.emulateNetworkConditions', NETWORK);
  const begun = performance.now();
  const since = (): number => (performance.now() - begun) / 1000;
  await page.goto(address);
  await page.locator('.bar button[type=submit]').waitFor();
  const first = since();
  await page.waitForFunction(DRAWN);
  await page.waitForTimeout(500);
  const { skill } = await storeOf(page);
  if (skill !== LOST) throw new Error(`asked ${skill}, and ${LOST} is due`);
  const waitFor = async (what: 'lines' | 'whole'): Promise<number> => {
    while ((await storeOf(page))[what] < count) await page.waitForTimeout(200);
    return since();
  };
  const lines = await waitFor('lines');
  const whole = await waitFor('whole');
  await context.close();
  const who = `new device, ${count} answers, ${SLOWED} times slowed, slow network`;
  return [
    { name: `${who}: the question that is due`, value: first, unit: 's', bound: 5 },
    { name: `${who}: all answers in short`, value: lines, unit: 's' },
    { name: `${who}: all answers whole`, value: whole, unit: 's' },
  ];
}

export async function bench(): Promise<Row[]> {
  const folder = await buildPage(join(mkdtempSync(join(tmpdir(), 'polewise-page-')), 'web'));
  const browser = await launch();
  const rows: Row[] = [];
  try {
    for (const count of [3000, 10_000]) {
      const data = mkdtempSync(join(tmpdir(), 'polewise-bench-'));
      const store = await openStore({ kind: 'file', file: storeFile(data) });
      const records = longHistory(count, Date.now());
      await store.keepAnswers(records);
      const app = await createServer({
        store,
        bank: ownBank(),
        words: english,
        folder,
        version: '0.0.0-bench',
      });
      const address = await app.listen({ host: '127.0.0.1', port: 0 });
      rows.push(...(await opened(browser, address, records.length)));
      await app.close();
      await store.close();
      rmSync(data, { recursive: true, force: true });
    }
  } finally {
    await browser.close();
    rmSync(dirname(folder), { recursive: true, force: true });
  }
  return rows;
}
