/** People on the page: coming in, classes, several people on one device, sessions that end; always against the real server. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { launch } from './support/chromium.ts';
import { comeFirst, join, keptOf, makeClass, PASSWORD, signIn, signOut } from './support/coming-in.ts';
import { HomeworkServer } from './support/homework-server.ts';
import { builtPage } from './support/page-server.ts';
import { allSent, answerOne, asking, check, DESK, device, fillIn, PHONE } from './support/practising.ts';

let browser: Browser;
let server: HomeworkServer;
const built = { folder: '', done: () => {} };

beforeAll(async () => {
  Object.assign(built, builtPage());
  browser = await launch();
});
afterAll(async () => {
  await browser?.close();
  built.done();
});
beforeEach(async () => {
  server = await HomeworkServer.begin(built.folder, []);
});
afterEach(() => server.end());

/** The administrator at a desk, with a class. */
async function classAtDesk(): Promise<{ desk: Page; code: string; id: string; complaints: string[] }> {
  const { page, complaints } = await device(browser, DESK);
  await comeFirst(page, server, 'Iris Kalmar');
  return { desk: page, complaints, ...(await makeClass(page, 'Flour line, Thursday')) };
}

const standing = (page: Page, words: RegExp): Promise<unknown> =>
  page.waitForFunction(
    (source) => new RegExp(source).test(document.querySelector('.standing')?.textContent ?? ''),
    words.source,
  );

const whose = (page: Page, name: string): Promise<void> =>
  page.locator('.strip .whose', { hasText: name }).waitFor();

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

describe('from the first run on', () => {
  it('an administrator makes a class, a learner joins by the slip, and answers arrive under the learner’s name', async () => {
    const { desk, code, complaints } = await classAtDesk();
    const phone = await device(browser, PHONE);
    await join(phone.page, server, code.toLowerCase().replace('-', ''), 'Ørjan Lind');
    await whose(phone.page, 'Ørjan Lind');
    for (let count = 0; count < 2; count++) await answerOne(phone.page, count);
    await allSent(phone.page);
    expect(await keptOf(server, 'orjan.lind')).toHaveLength(2);
    expect(await keptOf(server, 'iris.kalmar')).toEqual([]);
    expect(await server.look((store) => store.learners())).toMatchObject([{ answers: 2 }]);

    await desk.goto(`${server.address}/#/classes`);
    await desk.getByRole('link', { name: 'Flour line, Thursday' }).click();
    await desk.getByRole('row', { name: /Ørjan Lind/ }).waitFor();
    expect([...complaints, ...phone.complaints]).toEqual([]);
    for (const context of [desk.context(), phone.context]) await context.close();
  });

  it('a wrong key is refused beside its field, and nothing that was typed is lost', async () => {
    const { page, context } = await device(browser, PHONE);
    await page.goto(server.address);
    await page.getByLabel('Key').fill('AAAA-AAAA-AAAA-AAAA-AAAA');
    await page.getByRole('button', { name: 'Next' }).tap();
    await page.getByRole('button', { name: 'Next' }).tap();
    expect(await page.getByLabel('Your name').getAttribute('aria-invalid')).toBe('true');
    await page.getByLabel('Your name').fill('Iris Kalmar');
    await page.getByRole('button', { name: 'Next' }).tap();
    await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
    await page.getByRole('button', { name: 'Begin' }).tap();
    await page.locator('.amiss').waitFor();
    const key = page.getByLabel('Key');
    expect(await key.getAttribute('aria-describedby')).toContain(
      await page.locator('.amiss').getAttribute('id'),
    );
    expect(await key.inputValue()).toBe('AAAA-AAAA-AAAA-AAAA-AAAA');
    await key.fill('BBBB');
    await page.getByRole('button', { name: 'Next' }).tap();
    expect(await page.getByLabel('Password', { exact: true }).inputValue()).toBe(PASSWORD);
    expect(await page.getByLabel('Name for signing in').inputValue()).toBe('iris.kalmar');
    await context.close();
  });
});

describe('a link that was handed over', () => {
  it('lets in once; the password chosen then is good on any device', async () => {
    const { desk } = await classAtDesk();
    await desk.getByRole('link', { name: 'Add by name' }).click();
    await desk.getByLabel('Names, one on each line').fill('Ada Quill\n\n  Bo   Marsh ');
    await desk.getByRole('button', { name: 'Add 2 learners' }).click();
    await desk.getByRole('row', { name: /Bo Marsh/ }).waitFor();
    const link = (await desk.locator('.roll code').first().textContent()) ?? '';

    const first = await device(browser, PHONE);
    await first.page.goto(link);
    await first.page.getByRole('button', { name: 'Come in' }).tap();
    await first.page.getByRole('heading', { name: 'Good day, Ada Quill' }).waitFor();
    expect(first.page.url()).not.toContain(link.slice(-20));
    await first.page.getByLabel('Password', { exact: true }).fill(PASSWORD);
    await first.page.getByRole('button', { name: 'Set the password' }).tap();
    await asking(first.page);

    const second = await device(browser, PHONE);
    await second.page.goto(link);
    await second.page.getByRole('button', { name: 'Come in' }).tap();
    await second.page.getByText('This link no longer works').waitFor();
    await second.page.getByRole('link', { name: 'Sign in with a password instead' }).tap();
    // As a phone writes it.
    await signIn(second.page, 'Ada.Quill ');
    await asking(second.page);
    await whose(second.page, 'Ada Quill');
    for (const { context } of [first, second]) await context.close();
    await desk.context().close();
  });
});

describe('several people on one device', () => {
  it('each see their own work only; what waits for one who signed out is sent when that one is back', async () => {
    const { desk, code } = await classAtDesk();
    const { page, context, complaints } = await device(browser, PHONE);
    await join(page, server, code, 'Ada Quill');
    await answerOne(page);
    await allSent(page);
    await page.route('**/api/answers**', (route) => route.abort());
    await answerOne(page, 1);
    await standing(page, /1 answer waits/);
    const open = await page.locator('.title-block').first().textContent();
    await signOut(page);
    await page.unroute('**/api/answers**');
    expect(await page.locator('main').textContent()).not.toContain('Ada');

    await join(page, server, code, 'Bo Marsh');
    await whose(page, 'Bo Marsh');
    expect(await counted(page)).toBe('0 answers');
    await answerOne(page);
    await allSent(page);
    expect(await keptOf(server, 'bo.marsh')).toHaveLength(1);
    expect(await keptOf(server, 'ada.quill')).toHaveLength(1);
    await signOut(page);

    await signIn(page, 'ada.quill');
    await asking(page);
    await whose(page, 'Ada Quill');
    // Her question stands there as she left it, and what waited is sent.
    expect(await page.locator('.title-block').first().textContent()).toBe(open);
    await page.waitForFunction(
      async () => ((await (await fetch('/api/answers')).json()) as { last: number }).last === 2,
    );
    expect(await keptOf(server, 'ada.quill')).toHaveLength(2);
    expect(await keptOf(server, 'bo.marsh')).toHaveLength(1);
    expect(await counted(page)).toBe('2 answers');
    expect(complaints).toEqual([]);
    await context.close();
    await desk.context().close();
  });

  it('one who signs in in another tab never gets the answers of the one before', async () => {
    const { desk, code } = await classAtDesk();
    const { page, context } = await device(browser, DESK);
    await join(page, server, code, 'Ada Quill');
    await page.route('**/api/answers**', (route) => route.abort());
    await answerOne(page, 1);
    await standing(page, /1 answer waits/);
    // Another browser of the same cookie, which the page is not told of: only the server can notice.
    const other = await device(browser, DESK);
    await join(other.page, server, code, 'Bo Marsh');
    await context.addCookies(await other.context.cookies());
    await page.unroute('**/api/answers**');
    await page.evaluate(() => dispatchEvent(new Event('online')));
    await whose(page, 'Bo Marsh');
    await asking(page);
    expect(await counted(page)).toBe('0 answers');
    expect(await keptOf(server, 'bo.marsh')).toEqual([]);
    expect(await keptOf(server, 'ada.quill')).toEqual([]);
    await signOut(page);
    await signIn(page, 'ada.quill');
    await asking(page);
    await allSent(page);
    await page.waitForFunction(
      async () => ((await (await fetch('/api/answers')).json()) as { last: number }).last === 1,
    );
    expect(await keptOf(server, 'ada.quill')).toHaveLength(1);
    for (const each of [context, other.context, desk.context()]) await each.close();
  });

  it('without network whoever was there goes on, and signing out then holds when the network is back', async () => {
    const { desk, code } = await classAtDesk();
    const { page, context } = await device(browser, PHONE);
    await join(page, server, code, 'Ada Quill');
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.waitForFunction(async () => {
      for (const name of await caches.keys())
        if ((await (await caches.open(name)).keys()).length > 15) return true;
      return false;
    });
    await page.waitForFunction(
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
    await signIn(page, 'ada.quill');
    await asking(page);
    await allSent(page);
    await page.waitForFunction(
      async () => ((await (await fetch('/api/answers')).json()) as { last: number }).last === 1,
    );
    expect(await keptOf(server, 'ada.quill')).toHaveLength(1);
    for (const each of [context, desk.context()]) await each.close();
  });
});

describe('a session that was ended elsewhere', () => {
  it('lets practice go on, says so, loses nothing, and goes on when the same one signs in again', async () => {
    const { desk, code } = await classAtDesk();
    const { page, context, complaints } = await device(browser, PHONE);
    await join(page, server, code, 'Ada Quill');
    await answerOne(page);
    await allSent(page);
    await desk.getByRole('link', { name: 'Members' }).click();
    await desk.reload();
    await desk.getByRole('button', { name: 'Look after Ada Quill' }).click();
    await desk.getByRole('button', { name: 'Sign out everywhere…' }).click();
    await desk.getByRole('button', { name: 'Sign out everywhere', exact: true }).click();
    await desk.getByText('Signed out in 1 place.').waitFor();

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
    expect(await keptOf(server, 'ada.quill')).toHaveLength(2);
    // What stood there stands there still.
    expect(await page.locator('.bar .verdict').textContent()).toBe(verdict);
    expect(complaints).toEqual([]);
    for (const each of [context, desk.context()]) await each.close();
  });

  it('asks a tutor to sign in again over the form, with everything typed still in it', async () => {
    const { desk, id } = await classAtDesk();
    await desk.getByRole('link', { name: 'Add by name' }).click();
    await desk.getByLabel('Names, one on each line').fill('Ada Quill\nBo Marsh');
    await desk.context().clearCookies();
    await desk.getByRole('button', { name: 'Add 2 learners' }).click();
    await desk.getByRole('heading', { name: 'Sign in again' }).waitFor();
    await desk.locator('dialog').getByLabel('Password', { exact: true }).fill(PASSWORD);
    await desk.locator('dialog').getByRole('button', { name: 'Sign in', exact: true }).click();
    await desk.locator('dialog').waitFor({ state: 'detached' });
    expect(await desk.getByLabel('Names, one on each line').inputValue()).toBe('Ada Quill\nBo Marsh');
    await desk.getByRole('button', { name: 'Add 2 learners' }).click();
    await desk.getByRole('row', { name: /Bo Marsh/ }).waitFor();
    const detail = await server.look((store) => store.people.classes.get(id));
    expect(detail?.learners).toBe(2);
    await desk.context().close();
  });

  it('can be ended by the one whose it is, one or all the others', async () => {
    const { desk, code } = await classAtDesk();
    const first = await device(browser, PHONE);
    await join(first.page, server, code, 'Ada Quill');
    const others = [await device(browser, PHONE), await device(browser, PHONE)];
    for (const { page } of others) {
      await page.goto(server.address);
      await signIn(page, 'ada.quill');
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
    for (const { context } of [first, ...others]) await context.close();
    await desk.context().close();
  });
});
