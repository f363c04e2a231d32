/** A page that is open while its server gets another build: it is told between two questions, and nothing that stands goes. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { builtPage } from '../support/built.ts';
import { pageDesk } from './support/page-desk.ts';
import {
  allSent,
  answerOne,
  asking,
  check,
  fillIn,
  installed,
  next,
  openPractice,
  PHONE,
} from './support/practising.ts';

// Registered first, it is done last: once the server has ended.
afterEach(() => rmSync(at.folder, { recursive: true, force: true }));
const at = pageDesk('for-each-test', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'polewise-build-'));
  cpSync(await builtPage(), folder, { recursive: true });
  return folder;
});

/** Another build, as the server has it from now on: every script has another name. */
async function renew(): Promise<void> {
  await at.server.kill();
  const assets = join(at.folder, 'assets');
  const scripts = readdirSync(assets).filter((name) => name.endsWith('.js'));
  for (const file of ['index.html', 'service-worker.js', ...scripts.map((name) => `assets/${name}`)]) {
    const path = join(at.folder, file);
    let text = readFileSync(path, 'utf8');
    for (const name of scripts) text = text.replaceAll(name, `new-${name}`);
    writeFileSync(path, text);
  }
  for (const name of scripts) renameSync(join(assets, name), join(assets, `new-${name}`));
  // What was compressed beforehand has the old names in it.
  for (const place of [at.folder, assets])
    for (const name of readdirSync(place)) if (/\.(br|gz)$/.test(name)) rmSync(join(place, name));
  await at.server.start();
}

const notice = (page: Page) => page.locator('.renewal');
const script = (page: Page): Promise<string | null> =>
  page.locator('script[type=module][src]').first().getAttribute('src');
const chosen = (page: Page): Promise<(string | null)[]> =>
  page
    .locator('input[type=radio]:checked')
    .all()
    .then((all) => Promise.all(all.map((radio) => radio.getAttribute('value'))));

describe('a new build', () => {
  it('is told at the next question; the question and what was chosen stand there once it is loaded', async () => {
    const { page } = await at.take(PHONE);
    await openPractice(page, at.server.address);
    await installed(page);
    const before = await script(page);
    await renew();
    await fillIn(page);
    await check(page);
    await allSent(page);
    // In the middle of a question nobody is interrupted.
    expect(await notice(page).count()).toBe(0);
    await next(page);
    await asking(page);
    await notice(page).waitFor();
    await fillIn(page, 1);
    const title = await page.locator('.title-block').textContent();
    const states = await chosen(page);
    await page.getByRole('button', { name: 'Load anew' }).tap();
    await page.waitForFunction(
      (old) => document.querySelector('script[type=module][src]')?.getAttribute('src') !== old,
      before,
    );
    await asking(page);
    expect(await page.locator('.title-block').textContent()).toBe(title);
    expect(await chosen(page)).toEqual(states);
    expect(await notice(page).count()).toBe(0);
    expect(await at.server.kept()).toHaveLength(1);
  });

  it('that lacks a part of the page that is open offers to load anew where that part is wanted', async () => {
    const { page } = await at.take({ ...PHONE, serviceWorkers: 'block' });
    await openPractice(page, at.server.address);
    await answerOne(page);
    await allSent(page);
    await renew();
    await page.getByRole('link', { name: 'Progress', exact: true }).tap();
    await notice(page).waitFor();
    expect(await notice(page).textContent()).toMatch(/part of this one is no longer to be had/);
    await page.getByRole('button', { name: 'Load anew' }).tap();
    await page.waitForSelector('.strengths');
    expect(await notice(page).count()).toBe(0);
  });

  it('leaves a page that is open its parts, where they are kept on the device', async () => {
    const { page } = await at.take(PHONE);
    await openPractice(page, at.server.address);
    await answerOne(page);
    await installed(page);
    const count = (): Promise<number> => page.evaluate(() => caches.keys().then(({ length }) => length));
    await renew();
    await page.evaluate(async () => {
      const kept = await navigator.serviceWorker.ready;
      const controlled = new Promise((resolve) => {
        navigator.serviceWorker.addEventListener('controllerchange', resolve);
      });
      await kept.update();
      await controlled;
    });
    expect(await count()).toBe(2);
    await page.getByRole('link', { name: 'Progress', exact: true }).tap();
    await page.waitForSelector('.strengths');
  });
});
