/** WCAG 2.2 A and AA as far as axe-core can tell, on every screen in both themes; sizes, zoom and motion by hand. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { PALETTES } from '../../src/drawing/index.ts';
import { violations } from './support/axe.ts';
import { everyKind, openTask } from './support/every-kind.ts';
import { pageDesk } from './support/page-desk.ts';
import { asking, check, DESK, fillIn, next, openPractice, PHONE } from './support/practising.ts';

const at = pageDesk('for-the-file');

/** Every screen, and the practice in each of its states: what makes it stand there. */
const SCREENS: readonly (readonly [string, (page: Page) => Promise<unknown>])[] = [
  ['the first visit', (page) => openPractice(page, at.server.address)],
  [
    'an answer half given, with a hint',
    async (page) => {
      await page.locator('button.spot').first().click();
      await page.getByRole('button', { name: /^Hint/ }).click();
      await page.waitForSelector('.hint:not(.empty)');
    },
  ],
  [
    'a mark',
    async (page) => {
      await fillIn(page, 1);
      await check(page);
      await page.waitForSelector('.transport');
      for (const summary of await page.locator('.in-words summary, .story summary').all())
        await summary.click();
      await page.waitForSelector('.in-words li');
    },
  ],
  [
    'a placement',
    async (page) => {
      await next(page);
      await asking(page);
    },
  ],
  [
    'lessons',
    (page) => page.goto(`${at.server.address}/#/lessons`).then(() => page.waitForSelector('.contents li')),
  ],
  [
    'a lesson',
    async (page) => {
      await page.goto(`${at.server.address}/#/lessons/changeover-pole`);
      await page.waitForSelector('.lesson .lines img');
      await page.waitForSelector('.lesson-question fieldset');
    },
  ],
  [
    'progress',
    (page) => page.goto(`${at.server.address}/#/progress`).then(() => page.waitForSelector('.strengths')),
  ],
  [
    'what erasing means',
    async (page) => {
      await page.getByRole('button', { name: /^Erase it/ }).click();
      await page.getByRole('button', { name: 'Keep everything' }).waitFor();
    },
  ],
  [
    'try it',
    (page) => page.goto(`${at.server.address}/#/try`).then(() => page.waitForSelector('.readings li')),
  ],
  [
    'a meter on two isolated supplies',
    async (page) => {
      await page.goto(`${at.server.address}/#/try/two-isolated-supplies.water-tank`);
      await page.locator('.try .switch-row label', { hasText: 'Measure' }).click();
      await page.waitForSelector('.try .measure button.spot');
      await page.locator('.try button.spot').first().click();
      await page.locator('.try button.spot').last().click();
      await page.waitForSelector('.try .laid');
    },
  ],
  [
    'a conductor off',
    async (page) => {
      await page.locator('.try .switch-row label', { hasText: 'Break' }).click();
      await page.locator('.try .break button.spot').nth(3).click();
      await page.waitForSelector('.try .spot.broken');
    },
  ],
  [
    'write',
    (page) => page.goto(`${at.server.address}/#/bench`).then(() => page.waitForSelector('.bench .lines img')),
  ],
];

describe.each(['light', 'dark'] as const)('in the %s theme', (colorScheme) => {
  it.each([
    ['on a phone', PHONE],
    ['on a desk', DESK],
  ])('axe-core finds nothing on any screen %s', async (_, size) => {
    const { page } = await at.take({ ...size, colorScheme });
    const found: string[] = [];
    for (const [name, open] of SCREENS) {
      await open(page);
      found.push(...(await violations(page)).map((text) => `${name}: ${text}`));
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
        name,
      ).toBeLessThanOrEqual(0);
    }
    expect(found).toEqual([]);
  });
});

describe('every kind of question', () => {
  it.each([
    ['on a phone', { ...PHONE, colorScheme: 'dark' as const }],
    ['on a desk', { ...DESK, colorScheme: 'light' as const }],
  ])('asked and marked, axe-core finds nothing %s', async (_, size) => {
    const { page } = await at.take(size);
    await openPractice(page, at.server.address);
    const found: string[] = [];
    const look = async (name: string): Promise<void> => {
      // At the end of the page, where the bar stands below the answers: elsewhere its edge may happen to be drawn across one of them.
      await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
      found.push(...(await violations(page)).map((text) => `${name}: ${text}`));
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
        name,
      ).toBeLessThanOrEqual(0);
    };
    const kinds = everyKind();
    expect(kinds.size).toBeGreaterThan(6);
    for (const [name, task] of kinds) {
      await openTask(page, task);
      for (const spot of (await page.locator('button.spot').all()).slice(0, 2)) await spot.click();
      await look(name);
      await fillIn(page, 1);
      await check(page);
      if (name.endsWith('with waits')) await page.waitForSelector('.timing img');
      await look(`${name}, marked`);
    }
    expect(found).toEqual([]);
  });
});

describe('the page', () => {
  it('has targets of 44 pixels on a phone; only terminals that stand close together are smaller', async () => {
    const { page } = await at.take(PHONE);
    for (const [name, open] of SCREENS) {
      await open(page);
      const small = await page.evaluate(() =>
        [
          ...document.querySelectorAll<HTMLElement>(
            'button, nav a, a.button, select, summary, label.choice, .switch-row label, input:not([type=radio], [type=checkbox])',
          ),
        ]
          .filter((element) => element.checkVisibility() && !element.matches('.spot.terminal'))
          .map((element) => ({ text: element.outerHTML.slice(0, 120), box: element.getBoundingClientRect() }))
          .filter(({ box }) => box.height < 43.5 || box.width < 43.5)
          .map(({ text, box }) => `${text} ${box.width} x ${box.height}`),
      );
      expect(small, name).toEqual([]);
    }
  });

  it('loses nothing at twice the size: all of it is there and nothing sticks out', async () => {
    // 1280 by 800 at 200 % has 640 by 400 pixels to lay out in.
    const { page } = await at.take({
      viewport: { width: 640, height: 400 },
      deviceScaleFactor: 2,
    });
    for (const [name, open] of SCREENS) {
      await open(page);
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
        name,
      ).toBeLessThanOrEqual(0);
      for (const link of ['Practise', 'Lessons', 'Progress', 'Try it', 'Write'])
        expect(await page.getByRole('link', { name: link, exact: true }).first().isVisible(), name).toBe(
          true,
        );
    }
  });

  it('moves nothing by itself', async () => {
    const { page } = await at.take({ ...DESK, reducedMotion: 'reduce' });
    await openPractice(page, at.server.address);
    await fillIn(page);
    await check(page);
    await page.waitForSelector('.transport');
    const moving = await page.evaluate(() => document.getAnimations().length);
    expect(moving).toBe(0);
    expect(await page.locator('.transport .count').textContent()).toMatch(/^(\d+)\/\1$/);
  });

  it('is drawn anew when the theme changes or the phone is turned, whatever stands there', async () => {
    const { page } = await at.take({ ...PHONE, colorScheme: 'light' });
    const drawnIn = (colour: string, width: number): Promise<unknown> =>
      page.waitForFunction(
        ([paper, most]) => {
          const image = document.querySelector<HTMLImageElement>('.question .lines img');
          return (
            decodeURIComponent(image?.src ?? '').includes(`fill="${paper}"`) &&
            (image?.width ?? 0) > 0 &&
            image?.naturalWidth !== most
          );
        },
        [colour, width] as const,
      );
    await openPractice(page, at.server.address);
    await page.locator('button.spot').first().tap();
    const chosen = await page.locator('button.spot').first().getAttribute('data-state');
    await page.getByRole('button', { name: 'Dark', exact: true }).tap();
    await drawnIn(PALETTES.dark.paper, 0);
    expect(await page.locator('button.spot').first().getAttribute('data-state')).toBe(chosen);
    await fillIn(page);
    await check(page);
    await page.waitForSelector('.transport');
    await page.getByRole('button', { name: 'Light', exact: true }).tap();
    await drawnIn(PALETTES.light.paper, 0);
    await page.waitForSelector('.transport');
    const narrow = await page.evaluate(
      () => document.querySelector<HTMLImageElement>('.question .lines img')?.naturalWidth ?? 0,
    );
    await page.setViewportSize({ width: 740, height: 360 });
    await drawnIn(PALETTES.light.paper, narrow);
    expect(await page.locator('.bar .verdict').textContent()).toMatch(/right/i);
    await next(page);
    await asking(page);
  });
});
