/** The page in a language that is longer than English and has accents: everything that it says goes through the catalogue, and fits. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { bench } from '../../src/words/en/page/bench.ts';
import { builtPageMadeUp } from '../support/built.ts';
import { MADE_UP, unsaid } from '../support/made-up-language.ts';
import { everyKind, openTask } from './support/every-kind.ts';
import { notSaid } from './support/not-said.ts';
import { pageDesk } from './support/page-desk.ts';
import { asking, check, fillIn, openPractice, PHONE } from './support/practising.ts';

const at = pageDesk('for-the-file', builtPageMadeUp);

const inTwentyDays = new Date(Date.now() + 20 * 86_400_000).toISOString().slice(0, 10);

type Step = readonly [string, (page: Page) => Promise<unknown>];

const to = async (page: Page, hash: string, seen: string): Promise<void> => {
  await page.goto(`${at.server.address}/#/${hash}`);
  await page.waitForSelector(seen);
};

const STEPS: readonly Step[] = [
  ['the first visit', (page) => openPractice(page, at.server.address)],
  [
    'a hint',
    async (page) => {
      await page.locator('button.spot').first().click();
      await page.locator('.bar .plain').click();
      await page.waitForSelector('.hint:not(.empty)');
    },
  ],
  [
    'a mark',
    async (page) => {
      await fillIn(page, 1);
      await check(page);
      await page.waitForSelector('.transport');
      await page.locator('.transport button').first().click();
      for (const summary of await page.locator('.in-words summary, .story summary').all())
        await summary.click();
      await page.waitForSelector('.in-words li');
    },
  ],
  [
    'one skill only',
    async (page) => {
      await page.goto(`${at.server.address}/#/practise/changeover-legs`);
      await page.waitForSelector('.begin.placing');
      await asking(page);
    },
  ],
  ['lessons', (page) => to(page, 'lessons', '.contents li')],
  ['a lesson', (page) => to(page, 'lessons/changeover-pole', '.lesson-question fieldset')],
  ['progress', (page) => to(page, 'progress', '.strengths')],
  [
    'a plan',
    async (page) => {
      await page.locator('.wishes input[type=date]').fill(inTwentyDays);
      await page.locator('.wishes input[type=number]').first().fill('20');
      await page.keyboard.press('Tab');
      await page.waitForSelector('.days li');
    },
  ],
  [
    'what erasing means',
    async (page) => {
      await page.locator('.own-data button').click();
      await page.waitForSelector('.confirm');
    },
  ],
  ['try it', (page) => to(page, 'try', '.readings li')],
  [
    'a meter',
    async (page) => {
      await to(page, 'try/two-isolated-supplies.water-tank', '.readings li');
      await page.locator('.try .switch-row label').nth(1).click();
      await page.waitForSelector('.try .measure button.spot');
      await page.locator('.try button.spot').first().click();
      await page.locator('.try button.spot').last().click();
      await page.waitForSelector('.try .laid');
    },
  ],
  [
    'a conductor off',
    async (page) => {
      await page.locator('.try .switch-row label').nth(2).click();
      await page.locator('.try .break button.spot').nth(3).click();
      await page.waitForSelector('.try .spot.broken');
    },
  ],
  [
    'write',
    async (page) => {
      await to(page, 'bench', 'textarea');
      await page.locator('textarea').fill(bench.example);
      await page.waitForSelector('.bench .lines img');
      await page.waitForSelector('.bench .readings li');
    },
  ],
  [
    'write, with a mistake',
    async (page) => {
      await page.locator('textarea').fill('-K1 nothing');
      await page.waitForSelector('.problems .step');
    },
  ],
];

async function look(page: Page, name: string): Promise<string[]> {
  const out = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  const found = [...(await notSaid(page)), ...(out > 0 ? [`sticks out by ${out} pixels`] : [])];
  return found.map((text) => `${name}: ${text}`);
}

describe('the page in another language', () => {
  it('says that it is in it', async () => {
    const { page } = await at.take({ ...PHONE, locale: MADE_UP });
    await openPractice(page, at.server.address);
    expect(await page.locator('html').getAttribute('lang')).toBe(MADE_UP);
  });

  it('has its files in it: what stands there before a script runs, and what it is called where it is installed', async () => {
    const read = async (path: string): Promise<string> => (await fetch(`${at.server.address}${path}`)).text();
    const html = await read('/');
    const said = [...html.matchAll(/<noscript>(.*)<\/noscript>|name="description" content="(.*)"/g)].map(
      ([, ...texts]) => texts.join(''),
    );
    const { name, description, lang } = JSON.parse(await read('/manifest.webmanifest'));
    expect(said).toHaveLength(2);
    for (const text of [...said, name, description]) expect(unsaid(text).trim()).toBe('');
    expect([lang, html.includes(`<html lang="${MADE_UP}">`)]).toEqual([MADE_UP, true]);
  });

  it('is in English for who reads none of its languages', async () => {
    const { page } = await at.take({ ...PHONE, locale: 'mi-NZ' });
    await openPractice(page, at.server.address);
    expect(await page.locator('html').getAttribute('lang')).toBe('en');
    expect(await page.title()).toBe('Practise · Polewise');
    expect((await notSaid(page)).length).toBeGreaterThan(10);
    // So are the banks: nothing need say so.
    await to(page, 'lessons/changeover-pole', '.lesson h1');
    expect(await page.locator('body [lang]').count()).toBe(0);
  });

  // Before anything has been answered at this server.
  it('finds where to begin in it, and says what it found', async () => {
    const { page } = await at.take({ ...PHONE, locale: MADE_UP });
    await openPractice(page, at.server.address);
    await page.locator('.begin .way[aria-pressed=false]').click();
    await page.waitForSelector('.begin.placing');
    await asking(page);
    const found = await look(page, 'under way');
    await page.locator('.begin.placing button').click();
    await page.waitForSelector('.opening h1');
    expect([...found, ...(await look(page, 'found'))]).toEqual([]);
  });

  it('says everything in it where nobody signs in, and has room for it on a phone', async () => {
    const { page } = await at.take({ ...PHONE, locale: MADE_UP });
    const found: string[] = [];
    for (const [name, open] of STEPS) {
      await open(page);
      found.push(...(await look(page, name)));
    }
    expect(found).toEqual([]);
  });

  it('asks and marks every kind of question in it', async () => {
    const { page } = await at.take({ ...PHONE, locale: MADE_UP });
    await openPractice(page, at.server.address);
    const found: string[] = [];
    for (const [name, task] of everyKind()) {
      await openTask(page, task);
      found.push(...(await look(page, name)));
      await fillIn(page, 1);
      await check(page);
      found.push(...(await look(page, `${name}, marked`)));
    }
    expect(found).toEqual([]);
  });
});
