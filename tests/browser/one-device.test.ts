/** Several people on one device, and sessions that end meanwhile: nobody sees another's work, and no answer is lost. */
import type { Page, Route } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { LOST, longHistory } from '../support/long-history.ts';
import { classDesk } from './support/class-desk.ts';
import { join, keptOf, PASSWORD, signIn, signOut, whose } from './support/coming-in.ts';
import { allSent, answerOne, asking, check, DESK, fillIn, installed, PHONE } from './support/practising.ts';
import { until } from './support/until.ts';

const at = classDesk();

const standing = (page: Page, words: RegExp): Promise<unknown> =>
  page.waitForFunction(
    (source) => new RegExp(source).test(document.querySelector('.standing')?.textContent ?? ''),
    words.source,
  );

/** How many answers the page knows of, as Progress tells. */
async function counted(page: Page): Promise<string> {
  await page.evaluate(() => {
    location.hash = '#/progress';
  });
  const text = await page.locator('.own-data > p').first().textContent();
  await page.evaluate(() => {
    location.hash = '#/practise';
  });
  return /^\d+ answers?/.exec(text ?? '')?.[0] ?? '';
}

/** The questions are on the device. */
const bankKept = (page: Page): Promise<void> =>
  until(
    page,
    () =>
      new Promise<boolean>((resolve) => {
        const opening = indexedDB.open('polewise');
        opening.onsuccess = () => {
          const asked = opening.result.transaction('values').objectStore('values').get('bank');
          asked.onsuccess = () => {
            opening.result.close();
            resolve(asked.result !== undefined);
          };
        };
      }),
  );

/** Waits until the server has so many answers of the one who is signed in. */
const arrived = (page: Page, count: number): Promise<void> =>
  until(
    page,
    async (wanted) => ((await (await fetch('/api/answers')).json()) as { last: number }).last === wanted,
    count,
  );

describe('several people on one device', () => {
  it('each see their own work only; what waits for one who signed out is sent when that one is back', async () => {
    const { code } = await at.newClass('Class of Cleo Vint');
    const { page } = await at.take(PHONE);
    await join(page, at.server, code, 'Cleo Vint');
    await answerOne(page);
    await allSent(page);
    await page.route('**/api/answers**', (route) => route.abort());
    await answerOne(page, 1);
    await standing(page, /1 answer waits/);
    const open = await page.locator('.title-block').first().textContent();
    await signOut(page);
    await page.unroute('**/api/answers**');
    expect(await page.locator('main').textContent()).not.toContain('Cleo');

    await join(page, at.server, code, 'Dan Orr');
    await whose(page, 'Dan Orr');
    expect(await counted(page)).toBe('0 answers');
    await answerOne(page);
    await allSent(page);
    expect(await keptOf(at.server, 'dan.orr')).toHaveLength(1);
    expect(await keptOf(at.server, 'cleo.vint')).toHaveLength(1);
    await signOut(page);

    await signIn(page, 'cleo.vint');
    await asking(page);
    await whose(page, 'Cleo Vint');
    // Her question stands there as she left it, and what waited is sent.
    expect(await page.locator('.title-block').first().textContent()).toBe(open);
    await arrived(page, 2);
    expect(await keptOf(at.server, 'cleo.vint')).toHaveLength(2);
    expect(await keptOf(at.server, 'dan.orr')).toHaveLength(1);
    expect(await counted(page)).toBe('2 answers');
  });

  it('one who signs in in another tab never gets the answers of the one before', async () => {
    const { code } = await at.newClass('Class of Eve Tarn');
    const { page, context } = await at.take(DESK);
    await join(page, at.server, code, 'Eve Tarn');
    await page.route('**/api/answers**', (route) => route.abort());
    await answerOne(page, 1);
    await standing(page, /1 answer waits/);
    // Another browser of the same cookie, which the page is not told of: only the at.server can notice.
    const other = await at.take(DESK);
    await join(other.page, at.server, code, 'Fay Moss');
    await context.addCookies(await other.context.cookies());
    await page.unroute('**/api/answers**');
    await page.evaluate(() => dispatchEvent(new Event('online')));
    await whose(page, 'Fay Moss');
    await asking(page);
    expect(await counted(page)).toBe('0 answers');
    expect(await keptOf(at.server, 'fay.moss')).toEqual([]);
    expect(await keptOf(at.server, 'eve.tarn')).toEqual([]);
    await signOut(page);
    await signIn(page, 'eve.tarn');
    await asking(page);
    await allSent(page);
    await arrived(page, 1);
    expect(await keptOf(at.server, 'eve.tarn')).toHaveLength(1);
  });

  it('without network whoever was there goes on, and signing out then holds when the network is back', async () => {
    const { code } = await at.newClass('Class of Gus Reed');
    const { page, context } = await at.take(PHONE);
    await join(page, at.server, code, 'Gus Reed');
    await installed(page);
    await bankKept(page);
    await context.setOffline(true);
    await page.reload();
    await asking(page);
    await answerOne(page);
    await standing(page, /1 answer waits for the network/);
    await signOut(page);
    await context.setOffline(false);
    await page.reload();
    await page.getByRole('heading', { name: 'Sign in' }).waitFor();
    expect((await context.cookies()).filter(({ name }) => name === 'polewise_session')).toEqual([]);
    await signIn(page, 'gus.reed');
    await asking(page);
    await allSent(page);
    await arrived(page, 1);
    expect(await keptOf(at.server, 'gus.reed')).toHaveLength(1);
  });
});

/** Whose lists of homework the device keeps. */
const homeworkOf = (page: Page): Promise<unknown> =>
  page.evaluate(
    () =>
      new Promise((resolve) => {
        const opening = indexedDB.open('polewise-homework');
        opening.onsuccess = () => {
          const asked = opening.result.transaction('lists').objectStore('lists').getAllKeys();
          asked.onsuccess = () => {
            opening.result.close();
            resolve(asked.result);
          };
        };
      }),
  );

/** What is in one person's store on the device: how many answers, and what else it knows. */
const storeOf = (page: Page, id: string): Promise<unknown> =>
  page.evaluate(
    (name) =>
      new Promise((resolve) => {
        const opening = indexedDB.open(name);
        opening.onsuccess = () => {
          const counting = opening.result.transaction('answers').objectStore('answers').count();
          counting.onsuccess = () => {
            opening.result.close();
            resolve(counting.result);
          };
        };
      }),
    `polewise-person-${id}`,
  );

/** Which skill the open question is of. */
const skillOpen = (page: Page): Promise<unknown> =>
  page.evaluate(async () => {
    const names = (await indexedDB.databases()).map(({ name }) => name ?? '');
    const own = names.find((name) => name.startsWith('polewise-person-')) ?? 'polewise';
    return new Promise((resolve) => {
      const opening = indexedDB.open(own);
      opening.onsuccess = () => {
        const asked = opening.result.transaction('values').objectStore('values').get('open');
        asked.onsuccess = () => {
          opening.result.close();
          resolve(asked.result?.task.skill);
        };
      };
    });
  });

describe('somebody who is new on a device', () => {
  const HELD = '**/api/recalls';

  it('gets the first question once what was practised elsewhere is there', async () => {
    const { code } = await at.newClass('Class of Lil Broom');
    const phone = await at.take(PHONE);
    await join(phone.page, at.server, code, 'Lil Broom');
    await answerOne(phone.page);
    await answerOne(phone.page);
    await allSent(phone.page);
    const { page } = await at.take(DESK);
    let release: () => void = () => undefined;
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    await page.route(HELD, async (route) => {
      await held;
      await route.continue();
    });
    await page.goto(at.server.address);
    await signIn(page, 'lil.broom');
    await page.getByText('Looking whether you have practised on another device').waitFor();
    expect(await page.locator('.question').count()).toBe(0);
    release();
    await asking(page);
    // Nobody who has practised is asked where to begin.
    expect(await page.locator('.begin').count()).toBe(0);
    // The answers themselves come after it.
    await expect.poll(() => counted(page)).toBe('2 answers');
  });

  it('is asked what is due, though not one of a year of answers is there yet, and is told what is on its way', async () => {
    const { code } = await at.newClass('Class of Pia Elder');
    const phone = await at.take(PHONE);
    await join(phone.page, at.server, code, 'Pia Elder');
    const history = longHistory(1200, Date.now());
    await at.server.look(async (store) => {
      const found = await store.people.persons.bySignIn('pia.elder');
      await store.keepAnswers(history.map((record) => ({ ...record, learner: found?.person.id ?? '' })));
    });
    const { page } = await at.take(PHONE);
    let release: () => void = () => undefined;
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    const slowly = async (route: Route): Promise<void> => {
      await held;
      await route.continue();
    };
    await page.route('**/api/lines**', slowly);
    await page.goto(at.server.address);
    await signIn(page, 'pia.elder');
    await asking(page);
    expect(await page.locator('.begin').count()).toBe(0);
    expect(await skillOpen(page)).toBe(LOST);
    await page.route('**/api/answers?**', slowly);
    await page.unroute('**/api/lines**');
    release();
    await standing(page, /1,000 of 1,\d\d\d|copied to this device/);
    await standing(page, /^$/);
    expect(await counted(page)).toBe(`${history.length} answers`);
  });

  it('gets it all the same where a network is there and nothing comes', async () => {
    const { code } = await at.newClass('Class of Moe Sallow');
    const { page } = await at.take(PHONE);
    await page.route(HELD, () => undefined);
    await join(page, at.server, code, 'Moe Sallow');
    expect(await page.locator('.begin').count()).toBe(1);
    await page.unrouteAll({ behavior: 'ignoreErrors' });
  });
});

describe('erasing where people sign in', () => {
  it('leaves nothing of that person on the device, and everything of others', async () => {
    const { code } = await at.newClass('Class of Nat Heath');
    const { page } = await at.take(PHONE);
    for (const name of ['Oda Lynd', 'Nat Heath']) {
      await join(page, at.server, code, name);
      await answerOne(page);
      await allSent(page);
      await page.getByRole('link', { name: 'Homework', exact: true }).tap();
      await page.locator('.homework .sheet-head').waitFor();
      if (name === 'Oda Lynd') await signOut(page);
    }
    const ids = await at.server.look(async ({ people }) =>
      Promise.all(
        ['oda.lynd', 'nat.heath'].map(async (name) => (await people.persons.bySignIn(name))?.person.id ?? ''),
      ),
    );
    const [oda = '', nat = ''] = ids;
    await page.waitForFunction(() => document.querySelector('.homework [role=status]') === null);
    expect(await homeworkOf(page)).toEqual(expect.arrayContaining(ids));
    await page.getByRole('link', { name: 'Progress', exact: true }).tap();
    await page.getByRole('button', { name: /^Erase it/ }).tap();
    await page.getByText(/What this device keeps of your homework goes as well/).waitFor();
    await page.getByRole('button', { name: 'Erase everything' }).tap();
    await page.waitForSelector('.begin');
    expect(await homeworkOf(page)).toEqual([oda]);
    expect(await storeOf(page, nat)).toBe(0);
    expect(await storeOf(page, oda)).toBe(1);
    expect(await keptOf(at.server, 'nat.heath')).toEqual([]);
    expect(await keptOf(at.server, 'oda.lynd')).toHaveLength(1);
  });
});

describe('a session that was ended elsewhere', () => {
  it('lets practice go on, says so, loses nothing, and goes on when the same one signs in again', async () => {
    const { code } = await at.newClass('Class of Hal Birch');
    const { page } = await at.take(PHONE);
    await join(page, at.server, code, 'Hal Birch');
    await answerOne(page);
    await allSent(page);
    await at.desk.getByRole('link', { name: 'Members' }).click();
    await at.desk.reload();
    await at.desk.getByRole('button', { name: 'Look after Hal Birch' }).click();
    await at.desk.getByRole('button', { name: 'Sign out everywhere…' }).click();
    await at.desk.getByRole('button', { name: 'Sign out everywhere', exact: true }).click();
    await at.desk.getByText('Signed out in 1 place.').waitFor();

    await fillIn(page, 1);
    await check(page);
    await standing(page, /no longer signed in here\. 1 answer waits/);
    const verdict = await page.locator('.bar .verdict').textContent();
    await page.getByRole('button', { name: 'Sign in again' }).tap();
    await page.getByLabel('Password', { exact: true }).fill('not the right one');
    await page.getByRole('button', { name: 'Sign in', exact: true }).tap();
    await page.locator('dialog .amiss').waitFor();
    await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
    await page.getByRole('button', { name: 'Sign in', exact: true }).tap();
    await page.locator('dialog[open]').waitFor({ state: 'detached' });
    await allSent(page);
    expect(await keptOf(at.server, 'hal.birch')).toHaveLength(2);
    // What stood there stands there still.
    expect(await page.locator('.bar .verdict').textContent()).toBe(verdict);
  });

  it('asks a tutor to sign in again over the form, with everything typed still in it', async () => {
    const { id } = await at.newClass('Class of Ida Fern');
    await at.desk.getByRole('link', { name: 'Add by name' }).click();
    await at.desk.getByLabel('Names, one on each line').fill('Ida Fern\nJon Sedge');
    await at.desk.context().clearCookies();
    await at.desk.getByRole('button', { name: 'Add 2 learners' }).click();
    await at.desk.getByRole('heading', { name: 'Sign in again' }).waitFor();
    await at.desk.locator('dialog').getByLabel('Password', { exact: true }).fill(PASSWORD);
    await at.desk.locator('dialog').getByRole('button', { name: 'Sign in', exact: true }).click();
    await at.desk.locator('dialog').waitFor({ state: 'detached' });
    expect(await at.desk.getByLabel('Names, one on each line').inputValue()).toBe('Ida Fern\nJon Sedge');
    await at.desk.getByRole('button', { name: 'Add 2 learners' }).click();
    await at.desk.getByRole('row', { name: /Jon Sedge/ }).waitFor();
    const detail = await at.server.look((store) => store.people.classes.get(id));
    expect(detail?.learners).toBe(2);
  });

  it('can be ended by the one whose it is, one or all the others', async () => {
    const { code } = await at.newClass('Class of Kim Alder');
    const first = await at.take(PHONE);
    await join(first.page, at.server, code, 'Kim Alder');
    const others = [await at.take(PHONE), await at.take(PHONE)];
    for (const { page } of others) {
      await page.goto(at.server.address);
      await signIn(page, 'kim.alder');
      await asking(page);
    }
    await first.page.getByRole('link', { name: /Account of/ }).tap();
    await first.page.locator('.account .roll tbody tr').nth(2).waitFor();
    await first.page.getByRole('button', { name: 'Sign out everywhere else' }).tap();
    await first.page.getByText('Signed out in 2 places.').waitFor();
    expect(await first.page.locator('.account .roll tbody tr').count()).toBe(1);
    for (const { page } of others) {
      await page.reload();
      await standing(page, /no longer signed in here/);
    }
  });
});
