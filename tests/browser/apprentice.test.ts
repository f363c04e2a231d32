/** The whole way of a new apprentice: by touch on a phone, and by keyboard alone at a desk. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { learnerExport } from '../../shared/api.ts';
import { everyKind, openTask, wiringOnOneSheet, wiringOverSheets } from './support/every-kind.ts';
import { pageDesk } from './support/page-desk.ts';
import {
  allSent,
  answerOne,
  asking,
  check,
  DESK,
  fillIn,
  fillInWrongly,
  marked,
  next,
  openPractice,
  PHONE,
} from './support/practising.ts';

const at = pageDesk('for-each-test');

/** Presses Tab until what has the focus fits, as somebody does who sees where the focus is. */
async function tabTo(page: Page, fits: string): Promise<void> {
  for (let presses = 0; presses < 80; presses++) {
    await page.keyboard.press('Tab');
    const there = await page.evaluate((selector) => {
      const element = document.activeElement;
      if (!element?.matches(selector)) return false;
      // Whatever the browser draws round it, it has to be seen.
      const box = element.getBoundingClientRect();
      return box.width > 0 && box.bottom > 0 && box.top < innerHeight;
    }, fits);
    if (there) return;
  }
  throw new Error(`the keyboard never reaches ${fits}`);
}

describe('a skill that goes wrong', () => {
  it('has its part of the lesson with the mark after two lost answers in a row, and not before', async () => {
    const { page } = await at.take(PHONE);
    await openPractice(page, `${at.server.address}/#/practise/make-contact`);
    const part = page.locator('.lesson-part');
    for (const wrong of [1, 2, 3]) {
      await fillInWrongly(page);
      await check(page);
      await page.waitForSelector('.transport');
      if (wrong === 1) {
        expect(await part.count()).toBe(0);
      } else {
        await part.waitFor();
        expect(await part.locator('h3').textContent()).toBe('A make contact');
        await part.locator('.board .drawing, .board svg, .board img').first().waitFor();
        expect(await part.getByRole('link', { name: 'The whole lesson' }).getAttribute('href')).toBe(
          '#/lessons/make-and-break',
        );
        // It doesn't widen the page.
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(360);
        if (wrong === 2) {
          // Looked at again, it is still the second.
          await page.reload();
          await part.waitFor();
        }
      }
      await next(page);
      await asking(page);
    }
  });
});

describe('by touch on a phone', () => {
  it('a newcomer answers on the drawing at once, sees why, and finds every screen', async () => {
    const { page } = await at.take(PHONE);
    await openPractice(page, at.server.address);

    // The first question stands there, with what is to be touched, before anything has to be read or chosen.
    const spots = page.locator('button.spot');
    expect(await spots.count()).toBeGreaterThan(0);
    for (const spot of await spots.all()) expect(await spot.locator('.tag').isVisible()).toBe(true);
    const submit = page.locator('.bar button[type=submit]');
    expect(await submit.isDisabled()).toBe(true);
    for (const spot of await spots.all()) await spot.tap();
    const first = await spots.first().getAttribute('data-state');
    expect(first).toBeTruthy();
    await spots.first().tap();
    expect(await spots.first().getAttribute('data-state')).not.toBe(first);
    // The same answer stands in the form.
    expect(await page.locator('input[type=radio]:checked').count()).toBe(await spots.count());
    expect(await submit.isEnabled()).toBe(true);
    await submit.tap();
    await marked(page);
    expect(await page.getByRole('status').filter({ hasText: /right/i }).first().textContent()).toMatch(
      /right\.$/i,
    );
    expect(await page.locator('.why li').count()).toBeGreaterThan(0);

    // The run can be played, stepped and scrubbed.
    await page.waitForSelector('.transport');
    const caption = page.locator('.transport .caption');
    const end = await caption.textContent();
    await page.getByRole('button', { name: 'Back', exact: true }).tap();
    expect(await caption.textContent()).not.toBe(end);
    await page.getByRole('button', { name: 'On', exact: true }).tap();
    expect(await caption.textContent()).toBe(end);
    await page.locator('.scrub input').fill('0');
    expect(await caption.textContent()).toMatch(/^1\//);

    await next(page);
    await asking(page);
    expect(await page.evaluate(() => scrollY)).toBe(0);
    for (let count = 0; count < 3; count++) await answerOne(page, count % 2);
    await allSent(page);
    expect(await at.server.kept()).toHaveLength(4);

    // Every screen is one touch away.
    await page.getByRole('link', { name: 'Lessons', exact: true }).tap();
    await page.locator('.contents a').first().tap();
    await page.waitForSelector('.lesson .lines img');
    await page.getByRole('link', { name: 'Progress', exact: true }).tap();
    await page.waitForSelector('.strengths tbody tr');
    await page.getByLabel('Minutes a day').fill('15');
    const day = await page.evaluate(() => new Date(Date.now() + 20 * 86_400_000).toISOString().slice(0, 10));
    await page.getByLabel('Assessment on').fill(day);
    await page.waitForSelector('.days li');
    await page.getByRole('link', { name: 'Try it', exact: true }).tap();
    await page.waitForSelector('.try button.spot');
    const standing = await page.locator('.try .cell').textContent();
    await page.locator('.try button.spot').first().tap();
    await page.waitForFunction(
      (before) => document.querySelector('.try .cell')?.textContent !== before,
      standing,
    );
    await page.getByRole('link', { name: 'Write', exact: true }).tap();
    await page
      .locator('#notation')
      .fill('# Broken\nsupply A 24 V AC\n-H1 lamp green "On"\nA:L -H1:X1-X9 A:N\n');
    await page.waitForSelector('.problems li');
    // The practice is where it was left.
    await page.getByRole('link', { name: 'Practise', exact: true }).tap();
    expect(await page.locator('.question:not(.try *) .title-block .cell').last().textContent()).toBe(
      'Question 5',
    );
  });

  it('puts a meter on a live circuit, breaks a conductor and mends it, touching the drawing', async () => {
    const { page } = await at.take(PHONE);
    await openPractice(page, at.server.address);
    await page.goto(`${at.server.address}/#/try/two-isolated-supplies.water-tank`);
    await page.waitForSelector('.try button.spot');
    const spot = (terminal: string) =>
      page.locator(
        `.try button.spot[aria-label="${terminal}"], .try button.spot[aria-label^="${terminal}:"]`,
      );
    const face = page.locator('.try .laid text:not(.number)');
    await page.locator('.try .switch-row label', { hasText: 'Measure' }).tap();
    await spot('-F1:2').first().tap();
    await spot('-K1:A2').first().tap();
    await page.getByText('-F1:2 against -K1:A2: 24 V.').waitFor();
    expect(await face.textContent()).toBe('24 V');
    expect(await page.locator('.try .caution').textContent()).toMatch(/isolate, lock off, prove dead/);
    // The other supply shares no reference with this one.
    await spot('-F2:2').first().tap();
    await page.getByText(/-F2:2 against -K1:A2: it shows nothing.*isolated supplies/).waitFor();
    expect(await face.textContent()).toBe('nothing');

    const lamp = page.locator('.try .readings li', { hasText: '-H1' }).locator('em');
    expect(await lamp.textContent()).toBe('lit');
    await page.locator('.try .switch-row label', { hasText: 'Break' }).tap();
    await spot('-K1:11').first().tap();
    await page.waitForSelector('.try .spot.broken');
    await lamp.filter({ hasText: 'dark' }).waitFor();
    await spot('-K1:11').first().tap();
    await page.waitForSelector('.try .spot.broken', { state: 'detached' });
    await lamp.filter({ hasText: 'lit' }).waitFor();
  });

  it('wires a contact and follows a sequence, touching the drawing', async () => {
    const { page } = await at.take(PHONE);
    await openPractice(page, at.server.address);
    const kinds = everyKind();
    await openTask(page, wiringOnOneSheet());
    await page.locator('button.spot').first().tap();
    await page.locator('.laid .conductor').first().waitFor();
    expect(await page.locator('.bar button[type=submit]').isDisabled()).toBe(true);
    await page.locator('button.spot:not([data-state])').first().tap();
    expect(await page.locator('.laid .conductor').count()).toBe(2);
    // The same answer stands in the form.
    expect(await page.locator('input[type=radio]:checked').count()).toBe(1);
    await check(page);

    await openTask(page, kinds.get('sequence')!);
    for (const moment of await page.locator('.switch-row label').all()) {
      await moment.tap();
      for (const spot of await page.locator('button.spot').all()) await spot.tap();
    }
    expect(await page.locator('.bar button[type=submit]').isEnabled()).toBe(true);
    await check(page);
  });

  it('says of a conductor that goes on on another sheet where it goes on, at both ends by the same sign', async () => {
    const { page } = await at.take(PHONE);
    await openPractice(page, at.server.address);
    const { task, choice } = wiringOverSheets();
    await openTask(page, task);
    await page.locator('.item .choice').nth(choice).tap();
    const signs = page.locator('.spot .tag', { hasText: /^1 / });
    await signs.nth(1).waitFor();
    // The number of the conductor, and the place of the other end as the drawing writes places: sheet and path.
    const sheets = page.locator('.drawing .sheet');
    expect(await sheets.count()).toBeGreaterThan(1);
    const here = await signs.allTextContents();
    expect(here).toHaveLength(2);
    // Sheets have the numbers that the circuit gives them.
    const numbers = task.question.circuit.sheets.map(({ number }) => number);
    expect(await sheets.count()).toBe(numbers.length);
    const on: number[] = [];
    for (const [index, sheet] of (await sheets.all()).entries())
      if ((await sheet.locator('.spot .tag', { hasText: /^1 / }).count()) > 0) on.push(numbers[index]!);
    expect(here).toEqual([
      expect.stringMatching(new RegExp(`^1 /${on[1]}\\.\\d+$`)),
      expect.stringMatching(new RegExp(`^1 /${on[0]}\\.\\d+$`)),
    ]);
    expect(await page.locator('.laid .conductor.on').count()).toBeGreaterThanOrEqual(2);
  });

  it('takes along what is kept, keeps it on second thought, and erases it here and on the server', async () => {
    const { page } = await at.take(PHONE);
    await openPractice(page, at.server.address);
    for (let count = 0; count < 2; count++) await answerOne(page, count);
    await allSent(page);
    await page.getByRole('link', { name: 'Progress', exact: true }).tap();
    const downloading = page.waitForEvent('download');
    await page.getByRole('link', { name: 'Download it' }).tap();
    const file = await (await downloading).path();
    const taken = learnerExport.parse(JSON.parse(readFileSync(file, 'utf8')));
    expect(taken.answers).toHaveLength(2);

    const erase = page.getByRole('button', { name: /^Erase it/ });
    await erase.tap();
    await page.getByText(/Gone are 2 answers/).waitFor();
    await page.getByRole('button', { name: 'Keep everything' }).tap();
    expect(await at.server.kept()).toHaveLength(2);
    // Without the server nothing is erased, and that is said.
    await erase.tap();
    await at.server.kill();
    await page.getByRole('button', { name: 'Erase everything' }).tap();
    await page.getByText(/Nothing was erased: the server cannot be reached/).waitFor();
    await at.server.start();
    expect(await at.server.kept()).toHaveLength(2);
    await page.getByRole('button', { name: 'Erase everything' }).tap();

    // As on the first visit, here and there.
    await page.waitForSelector('.begin');
    expect(await page.locator('.title-block .cell').last().textContent()).toBe('Question 1');
    expect(await at.server.kept()).toEqual([]);
    const left = await page.evaluate(
      () =>
        new Promise<number>((resolve) => {
          const opening = indexedDB.open('polewise');
          opening.onsuccess = () => {
            const counting = opening.result.transaction('answers').objectStore('answers').count();
            counting.onsuccess = () => resolve(counting.result);
          };
        }),
    );
    expect(left).toBe(0);
  });

  it('finds where to begin in at most eight questions, and goes on from there', async () => {
    const { page } = await at.take(PHONE);
    await openPractice(page, at.server.address);
    const skill = await page.locator('.title-block .wide').textContent();
    await page.getByRole('button', { name: /Find where to begin/ }).tap();
    await page.waitForSelector('.begin.placing');
    let asked = 0;
    for (; asked < 8; asked++) {
      // The solver behind the page knows the right answer: an apprentice who knows everything gives it.
      await fillIn(page, asked % 2);
      await check(page);
      await page.locator('.bar .main').tap();
      await page.waitForSelector('.begin.placing, .opening h1');
      if ((await page.locator('.opening h1').count()) > 0) break;
    }
    expect(asked).toBeLessThan(8);
    await page.getByRole('button', { name: 'Practise', exact: true }).tap();
    await asking(page);
    expect(await page.locator('.begin').count()).toBe(0);
    expect(await page.locator('.title-block .wide').textContent()).toBeTruthy();
    expect(skill).toBeTruthy();
    await allSent(page);
    const settings = (await (await fetch(`${at.server.address}/api/settings`)).json()) as {
      placement: unknown;
    };
    expect(settings.placement).not.toBeNull();
  });
});

describe('by keyboard alone at a desk', () => {
  it('a newcomer answers, takes a hint, reads why, and goes on', async () => {
    const { page } = await at.take(DESK);
    await openPractice(page, at.server.address);

    // On the drawing: each place says what it is and how it is answered.
    await tabTo(page, 'button.spot');
    await page.keyboard.press('Space');
    const name = await page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '');
    expect(name).toMatch(/^-[A-Z]+\d+.*: \w+$/);
    // In the form: the rest.
    const groups = await page.locator('.talk fieldset.item').count();
    for (let group = 0; group < groups; group++) {
      if (await page.locator('.bar button[type=submit]').isEnabled()) break;
      await tabTo(page, '.talk fieldset.item:not(:has(input:checked)) input');
      await page.keyboard.press('Space');
    }
    await tabTo(page, '.bar button.plain');
    await page.keyboard.press('Enter');
    await page.waitForSelector('.hint:not(.empty)');
    await page.keyboard.press('Shift+Tab');
    await tabTo(page, '.bar button[type=submit]');
    await page.keyboard.press('Enter');
    await marked(page);
    await page.waitForFunction(() => document.activeElement?.textContent === 'Next');

    // Back to the reasons: each points at the drawing, and at the run.
    for (let presses = 0; presses < 40; presses++) {
      await page.keyboard.press('Shift+Tab');
      if (await page.evaluate(() => document.activeElement?.matches('.why .step') ?? false)) break;
    }
    await page.waitForSelector('.pointed');
    await page.waitForSelector('.transport');
    for (let presses = 0; presses < 40; presses++) {
      await page.keyboard.press('Shift+Tab');
      if (await page.evaluate(() => document.activeElement?.matches('.scrub input') ?? false)) break;
    }
    await page.keyboard.press('Home');
    expect(await page.locator('.transport .count').textContent()).toMatch(/^1\//);

    await tabTo(page, '.bar .main');
    await page.keyboard.press('Enter');
    await asking(page);
    // Reading begins at the new question.
    await page.waitForFunction(() => document.activeElement?.tagName === 'H1');
    await allSent(page);
    expect(await at.server.kept()).toHaveLength(1);
  });

  it('reaches every screen, and presses a button of a live circuit', async () => {
    const { page } = await at.take(DESK);
    await openPractice(page, at.server.address);
    for (const [hash, seen] of [
      ['lessons', '.contents li'],
      ['progress', '.progress h1'],
      ['bench', '#notation'],
      ['try', '.acts button'],
    ] as const) {
      await page.keyboard.press('Control+Home');
      await tabTo(page, `a[href="#/${hash}"]`);
      await page.keyboard.press('Enter');
      await page.waitForSelector(seen);
    }
    await tabTo(page, '.acts button');
    await page.keyboard.press('Enter');
    await page.waitForFunction(() => document.querySelector('.try .cell')?.textContent === 'After 1 act');

    // The meter, on two places of the drawing.
    await page.keyboard.press('Control+Home');
    await page.locator('.try select').first().focus();
    await tabTo(page, '.try .switch-row input');
    await page.keyboard.press('ArrowRight');
    await page.waitForSelector('.try .measure button.spot');
    await tabTo(page, '.try button.spot');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.waitForFunction(() =>
      /against .*V\.|nothing/.test(document.querySelector('.try .reading')?.textContent ?? ''),
    );
    // A conductor, by the form.
    await tabTo(page, '.try .lead-at select');
    for (let presses = 0; presses < 40; presses++) {
      await page.keyboard.press('Shift+Tab');
      if (await page.evaluate(() => document.activeElement?.matches('.try .switch-row input') ?? false))
        break;
    }
    await page.keyboard.press('ArrowRight');
    await page.waitForSelector('.try .break button.spot');
    await tabTo(page, '.try [aria-label="Take the conductor off"]');
    await page.keyboard.press('ArrowDown');
    await page.waitForSelector('.try .spot.broken');
  });
});
