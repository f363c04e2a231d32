/** What a learner does on the page, waiting for what is seen and never for a time. */
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Question } from '../../../shared/question.ts';
import { rightAnswer } from '../../../src/questions/index.ts';
import { NEVER_COMES } from '../../support/hanging.ts';
import { until } from './until.ts';

export const PHONE: BrowserContextOptions = {
  viewport: { width: 360, height: 740 },
  hasTouch: true,
  isMobile: true,
};
export const DESK: BrowserContextOptions = { viewport: { width: 1280, height: 800 } };

/** A page of a device of its own, and everything it complains of. */
export async function device(
  browser: Browser,
  options: BrowserContextOptions,
): Promise<{ context: BrowserContext; page: Page; complaints: string[] }> {
  const context = await browser.newContext(options);
  context.setDefaultTimeout(NEVER_COMES);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('request', (request) => {
    const { protocol, hostname } = new URL(request.url());
    if (protocol !== 'data:' && hostname !== '127.0.0.1')
      complaints.push(`it asks elsewhere: ${request.url()}`);
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    // A request that finds no network is told there as well, and is expected.
    if (message.type() === 'error' && !message.text().startsWith('Failed to load resource'))
      complaints.push(message.text());
  });
  return { context, page, complaints };
}

export const asking = (page: Page): Promise<unknown> =>
  page.waitForSelector('.question .bar button[type=submit]');
export const marked = (page: Page): Promise<unknown> => page.waitForSelector('.question .explained');

/** Opens the page and waits for its first question. */
export async function openPractice(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await asking(page);
}

/** Answers everything by the form, with the choice at `at` of each. */
export async function fillIn(page: Page, at = 0): Promise<void> {
  const items = page.locator('.talk fieldset.item');
  for (let index = 0; index < (await items.count()); index++) {
    const radios = items.nth(index).locator('input[type=radio]');
    const count = await radios.count();
    if (count > 0) await radios.nth(Math.min(at, count - 1)).check();
    else await items.nth(index).locator('input[type=text]').fill('24');
  }
}

/** The question that is open, as the device keeps it. */
const openQuestion = (page: Page): Promise<Question> =>
  page.evaluate(
    () =>
      new Promise<Question>((resolve, reject) => {
        const opening = indexedDB.open('polewise');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const asked = opening.result.transaction('values').objectStore('values').get('open');
          asked.onerror = () => reject(asked.error);
          asked.onsuccess = () => {
            opening.result.close();
            resolve((asked.result as { task: { question: Question } }).task.question);
          };
        };
      }),
  );

/** Answers every state of the question that is open wrongly. */
export async function fillInWrongly(page: Page): Promise<void> {
  const right = rightAnswer(await openQuestion(page));
  if (!('states' in right)) throw new Error('no question that asks for states');
  const items = page.locator('.talk fieldset.item');
  const states = Object.values(right.states);
  expect(await items.count()).toBe(states.length);
  for (const [index, state] of states.entries())
    await items.nth(index).locator(`input[type=radio]:not([value="${state}"])`).first().check();
}

/** Checks what has been answered and waits for the mark. */
export async function check(page: Page): Promise<void> {
  await page.locator('.bar button[type=submit]').click();
  await marked(page);
}

export async function next(page: Page): Promise<void> {
  await page.locator('.bar .main', { hasText: 'Next' }).click();
  await page.waitForSelector('.explained', { state: 'detached' });
}

/** Answers the question that is open, whatever it is, and goes to the next. */
export async function answerOne(page: Page, at = 0): Promise<void> {
  await fillIn(page, at);
  await check(page);
  await next(page);
  await asking(page);
}

/** Waits until nothing waits for the server any more. */
export const allSent = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => (document.querySelector('.standing')?.textContent ?? '') === '');

/** The page's files are on the device, so that it opens without network. */
export async function installed(page: Page): Promise<void> {
  await page.evaluate(() => navigator.serviceWorker.ready.then(({ active }) => active?.state));
  await until(page, async () => {
    for (const name of await caches.keys())
      if ((await (await caches.open(name)).keys()).length > 15) return true;
    return false;
  });
}
