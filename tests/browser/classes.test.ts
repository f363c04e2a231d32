/** Classes on the page, from the very first visit on: administrator, slips, links; always against the real server. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { classDesk } from './support/class-desk.ts';
import { comeFirst, join, keptOf, makeClass, PASSWORD, signIn, whose } from './support/coming-in.ts';
import { HomeworkServer } from './support/homework-server.ts';
import { allSent, answerOne, asking, DESK, PHONE } from './support/practising.ts';

const at = classDesk();

describe('from the first run on', () => {
  let empty: HomeworkServer;
  beforeAll(async () => {
    empty = await HomeworkServer.begin(at.folder, []);
  });
  afterAll(() => empty?.end());

  it('a wrong key is refused beside its field, and nothing that was typed is lost', async () => {
    const { page } = await at.take(PHONE);
    await page.goto(empty.address);
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
  });

  it('an administrator makes a class, a learner joins by the slip, and answers arrive under the learner’s name', async () => {
    const { page: first } = await at.take(DESK);
    await comeFirst(first, empty, 'Iris Kalmar');
    const { code } = await makeClass(first, 'Flour line, Thursday');
    const phone = await at.take(PHONE);
    await join(phone.page, empty, code.toLowerCase().replace('-', ''), 'Ørjan Lind');
    await whose(phone.page, 'Ørjan Lind');
    for (let count = 0; count < 2; count++) await answerOne(phone.page, count);
    await allSent(phone.page);
    expect(await keptOf(empty, 'orjan.lind')).toHaveLength(2);
    expect(await keptOf(empty, 'iris.kalmar')).toEqual([]);
    // Of the administrator, whose practice was opened as well, there is no answer; whether anything was set depends on the moment.
    const summaries = await empty.look((store) => store.learners());
    expect(summaries.map(({ answers }) => answers).filter((answers) => answers > 0)).toEqual([2]);

    await first.goto(`${empty.address}/#/classes`);
    await first.getByRole('link', { name: 'Flour line, Thursday' }).click();
    await first.getByRole('row', { name: /Ørjan Lind/ }).waitFor();
  });
});

describe('a way on which passwords could be heard', () => {
  it('is not taken: the page says what is wrong instead of asking for one', async () => {
    const { page } = await at.take(PHONE);
    // As the server refuses what comes by plain http from elsewhere; here everything comes from this machine.
    const json = { code: 'not-secure', message: 'Passwords would be heard.', hint: 'Open it with https.' };
    await page.route('**/api/me', (route) => route.fulfill({ status: 403, json }));
    await page.goto(at.server.address);
    await page.getByText('Passwords would be heard. Open it with https.').waitFor();
    expect(await page.locator('input').count()).toBe(0);
  });
});

describe('a link that was handed over', () => {
  it('lets in once; the password chosen then is good on any device', async () => {
    await at.newClass('Class of Ada Quill');
    await at.desk.getByRole('link', { name: 'Add by name' }).click();
    await at.desk.getByLabel('Names, one on each line').fill('Ada Quill\n\n  Bo  Marsh ');
    await at.desk.getByRole('button', { name: 'Add 2 learners' }).click();
    await at.desk.getByRole('row', { name: /Bo Marsh/ }).waitFor();
    const link = (await at.desk.locator('.roll code').first().textContent()) ?? '';

    const first = await at.take(PHONE);
    await first.page.goto(link);
    await first.page.getByRole('button', { name: 'Come in' }).tap();
    await first.page.getByRole('heading', { name: 'Good day, Ada Quill' }).waitFor();
    expect(first.page.url()).not.toContain(link.slice(-20));
    await first.page.getByLabel('Password', { exact: true }).fill(PASSWORD);
    await first.page.getByRole('button', { name: 'Set the password' }).tap();
    await asking(first.page);

    const second = await at.take(PHONE);
    await second.page.goto(link);
    await second.page.getByRole('button', { name: 'Come in' }).tap();
    await second.page.getByText('This link no longer works').waitFor();
    await second.page.getByRole('link', { name: 'Sign in with a password instead' }).tap();
    // As a phone writes it.
    await signIn(second.page, 'Ada.Quill ');
    await asking(second.page);
    await whose(second.page, 'Ada Quill');
  });
});
