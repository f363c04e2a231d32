/** Without network, with two devices, over reloads, under a server that dies: no answer is lost, and none counts twice. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { pageDesk } from './support/page-desk.ts';
import {
  allSent,
  answerOne,
  asking,
  check,
  DESK,
  fillIn,
  installed,
  marked,
  openPractice,
  PHONE,
} from './support/practising.ts';
import { until } from './support/until.ts';

const at = pageDesk('for-each-test');

/** Ids of the answers on this device, in the order in which they were given. */
const onDevice = (page: Page): Promise<string[]> =>
  page.evaluate(
    () =>
      new Promise<string[]>((resolve, reject) => {
        const opening = indexedDB.open('polewise');
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const asked = opening.result
            .transaction('answers')
            .objectStore('answers')
            .index('by-time')
            .getAll();
          asked.onsuccess = () => {
            opening.result.close();
            resolve((asked.result as { id: string }[]).map(({ id }) => id));
          };
        };
      }),
  );

describe('a device without network', () => {
  it('opens, practises on every screen, and sends everything once and in order when it is back', async () => {
    const { context, page } = await at.take(PHONE);
    await openPractice(page, at.server.address);
    await answerOne(page);
    await allSent(page);
    await installed(page);
    await at.server.kill();
    await context.setOffline(true);

    await page.reload();
    await asking(page);
    for (let count = 0; count < 3; count++) await answerOne(page, count % 2);
    await page.waitForFunction(() =>
      /3 answers wait/.test(document.querySelector('.standing')?.textContent ?? ''),
    );
    for (const [name, seen] of [
      ['Lessons', '.contents li'],
      ['Progress', '.strengths'],
      ['Try it', '.readings li'],
      ['Write', '.bench .lines img'],
    ] as const) {
      await page.getByRole('link', { name, exact: true }).tap();
      await page.waitForSelector(seen);
    }
    const given = await onDevice(page);
    expect(given).toHaveLength(4);

    await at.server.start();
    await context.setOffline(false);
    await allSent(page);
    expect(await at.server.kept()).toEqual(given);
  });

  it('that has never been there says what to do', async () => {
    const { page } = await at.take(PHONE);
    await page.route('**/api/bank', (route) => route.abort());
    await page.goto(at.server.address);
    await page.waitForSelector('.opening button');
    expect(await page.locator('.opening').textContent()).toMatch(/Connect once/);
    await page.unroute('**/api/bank');
    await page.getByRole('button', { name: 'Try again' }).tap();
    await asking(page);
  });
});

describe('a device whose store fails', () => {
  it('keeps question, choices and answer on the screen, and the answer counts once there is room', async () => {
    const { page } = await at.take(PHONE);
    await openPractice(page, at.server.address);
    await fillIn(page);
    const before = await page.locator('.title-block').textContent();
    await page.evaluate(() => {
      const { put } = IDBObjectStore.prototype;
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
      addEventListener('room', () => {
        IDBObjectStore.prototype.put = put;
      });
    });
    await page.locator('.bar button[type=submit]').tap();
    await page.waitForSelector('.talk [role=alert]');
    expect(await page.locator('.talk [role=alert]').textContent()).toMatch(/no room left on this device/);
    expect(await page.locator('.title-block').textContent()).toBe(before);
    expect(await page.locator('input[type=radio]:checked').count()).toBeGreaterThan(0);
    await page.evaluate(() => dispatchEvent(new Event('room')));
    await check(page);
    await allSent(page);
    expect(await onDevice(page)).toHaveLength(1);
    expect(await at.server.kept()).toEqual(await onDevice(page));
  });

  it('gets back what it was given where the browser throws it away, and sends it', async () => {
    const { context, page } = await at.take(PHONE);
    await openPractice(page, at.server.address);
    await installed(page);
    await context.setOffline(true);
    await answerOne(page);
    const given = await onDevice(page);
    await page.evaluate(
      () =>
        new Promise((resolve) => {
          indexedDB.deleteDatabase('polewise').onsuccess = resolve;
        }),
    );
    await answerOne(page, 1);
    expect((await onDevice(page))[0]).toBe(given[0]);
    await context.setOffline(false);
    await allSent(page);
    expect(await at.server.kept()).toEqual(await onDevice(page));
    expect(await at.server.kept()).toHaveLength(2);
  });
});

describe('two devices of one learner', () => {
  it('that were offline together have both histories afterwards, on both', async () => {
    const [phone, desk] = [await at.take(PHONE), await at.take(DESK)];
    for (const { page } of [phone, desk]) {
      await openPractice(page, at.server.address);
      // What comes after an answer is fetched after the first question.
      await installed(page);
    }
    for (const { context } of [phone, desk]) await context.setOffline(true);
    for (const { page } of [phone, desk, phone]) await answerOne(page);
    const given = [...(await onDevice(phone.page)), ...(await onDevice(desk.page))].toSorted();
    expect(given).toHaveLength(3);
    for (const { context, page } of [phone, desk]) {
      await context.setOffline(false);
      await allSent(page);
    }
    // Each fetches what the other has sent when it is next opened.
    for (const { page } of [phone, desk]) {
      await page.reload();
      await asking(page);
      await page.evaluate(() => {
        location.hash = '#/progress';
      });
      await page.waitForFunction(() =>
        /of 3 right/.test(document.querySelector('.history')?.textContent ?? ''),
      );
      // Whole they come after their lines.
      await expect.poll(async () => (await onDevice(page)).toSorted()).toEqual(given);
    }
    expect((await at.server.kept()).toSorted()).toEqual(given);
  });
});

describe('a reload', () => {
  it('at any point brings the question back as it was, and loses no answer', async () => {
    const { page } = await at.take(PHONE);
    await openPractice(page, at.server.address);
    const title = (): Promise<string | null> => page.locator('.title-block').textContent();
    const states = async (): Promise<(string | null)[]> =>
      Promise.all(
        (await page.locator('input[type=radio]:checked').all()).map((radio) => radio.getAttribute('value')),
      );

    // Nothing chosen yet.
    const first = await title();
    await page.reload();
    await asking(page);
    expect(await title()).toBe(first);

    // Half answered, with a hint.
    await page.locator('button.spot').first().tap();
    await page.getByRole('button', { name: /^Hint/ }).tap();
    await page.waitForSelector('.hint:not(.empty)');
    const half = await states();
    expect(half).toHaveLength(1);
    await page.reload();
    await asking(page);
    await page.waitForSelector('.hint:not(.empty)');
    expect(await title()).toBe(first);
    expect(await states()).toEqual(half);

    // In the moment of checking: the answer counts, once.
    await fillIn(page);
    await page.evaluate(() => document.querySelector<HTMLElement>('.bar button[type=submit]')?.click());
    await page.reload();
    await page.waitForSelector('.question');
    if (
      (await page.locator('.explained').count()) === 0 &&
      (await page.locator('.bar button[type=submit]').count()) > 0
    )
      await check(page);
    await marked(page);
    expect(await title()).toBe(first);
    expect(await onDevice(page)).toHaveLength(1);

    // While the mark is read.
    const verdict = await page.locator('.bar .verdict').textContent();
    await page.reload();
    await marked(page);
    expect(await page.locator('.bar .verdict').textContent()).toBe(verdict);
    await allSent(page);
    expect(await at.server.kept()).toHaveLength(1);

    // After going on.
    await page.locator('.bar .main').tap();
    await page.waitForSelector('.explained', { state: 'detached' });
    await asking(page);
    const second = await title();
    expect(second).not.toBe(first);
    await page.reload();
    await asking(page);
    expect(await title()).toBe(second);
    expect(await at.server.kept()).toHaveLength(1);
  });
});

describe('a server', () => {
  it('that dies in mid answer gets it when it is back: once', async () => {
    const { page } = await at.take(DESK);
    await openPractice(page, at.server.address);
    await answerOne(page);
    await allSent(page);
    // It takes the request and dies before it replies.
    let dying: Promise<void> | undefined;
    await page.route('**/api/answers', async (route) => {
      if (route.request().method() !== 'POST' || dying) return route.continue();
      const reply = route.fetch().catch(() => undefined);
      await reply;
      dying = at.server.kill();
      await dying;
      return route.abort();
    });
    await fillIn(page, 1);
    await check(page);
    await page.waitForFunction(() =>
      /waits for the network/.test(document.querySelector('.standing')?.textContent ?? ''),
    );
    await page.unroute('**/api/answers');
    await at.server.start();
    await page.evaluate(() => dispatchEvent(new Event('online')));
    await allSent(page);
    expect(await at.server.kept()).toEqual(await onDevice(page));
    expect(await at.server.kept()).toHaveLength(2);
  });

  it('on which everything was erased, or a backup put back, gets all of it again', async () => {
    const { page } = await at.take(DESK);
    await openPractice(page, at.server.address);
    await answerOne(page);
    await allSent(page);
    const erased = await fetch(`${at.server.address}/api/learner?confirm=me`, { method: 'DELETE' });
    expect(erased.status).toBe(200);
    await answerOne(page);
    await allSent(page);
    await until(
      page,
      async () => ((await (await fetch('/api/answers')).json()) as { last: number }).last === 2,
    );
    expect((await at.server.kept()).toSorted()).toEqual((await onDevice(page)).toSorted());
  });
});
