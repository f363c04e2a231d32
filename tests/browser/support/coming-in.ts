/** How people come in by the page, and what of theirs the server keeps. */
import type { Page } from 'playwright-core';
import { shownFirstRunKey } from '../../../src/server/index.ts';
import type { HomeworkServer } from './homework-server.ts';
import { asking } from './practising.ts';

export const PASSWORD = 'nine potted ferns';

/** Makes the administrator with the key that the server prints. */
export async function comeFirst(page: Page, server: HomeworkServer, name: string): Promise<void> {
  const key = await server.look(({ people }) => shownFirstRunKey(people));
  await page.goto(server.address);
  await page.getByLabel('Key').fill(String(key));
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByLabel('Your name').fill(name);
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Begin' }).click();
  await page.getByRole('heading', { name: 'Classes' }).waitFor();
}

/** Makes a class; gives its code and its id. */
export async function makeClass(page: Page, title: string): Promise<{ code: string; id: string }> {
  await page.getByRole('link', { name: 'New class' }).click();
  await page.getByLabel('Name of the class').fill(title);
  await page.getByRole('button', { name: 'Make the class' }).click();
  const code = await page.locator('.big-code').textContent();
  const [, id = ''] = /classes\/([^.]+)\./.exec(page.url()) ?? [];
  return { code: code ?? '', id };
}

/** Joins by the slip's address, and waits for the first question. */
export async function join(page: Page, server: HomeworkServer, code: string, name: string): Promise<void> {
  await page.goto(`${server.address}/#/join/${code}`);
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByLabel('Your name').fill(name);
  await page.getByRole('button', { name: 'Next' }).click();
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Join the class' }).click();
  await asking(page);
}

/** Types name and password where they are asked for. */
export async function signIn(page: Page, name: string): Promise<void> {
  await page.getByLabel('Name for signing in').fill(name);
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
}

export async function signOut(page: Page): Promise<void> {
  await page.getByRole('link', { name: /Account of/ }).click();
  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await page.getByRole('heading', { name: 'Sign in' }).waitFor();
}

/** Ids of the answers that the server keeps of somebody, by the name for signing in. */
export const keptOf = (server: HomeworkServer, name: string): Promise<string[]> =>
  server.look(async (store) => {
    const found = await store.people.persons.bySignIn(name);
    if (!found) throw new Error(`nobody signs in as ${name}`);
    return (await store.answersOf(found.person.id)).map(({ id }) => id);
  });

/** Waits until this is whose page it is. */
export const whose = (page: Page, name: string): Promise<void> =>
  page.locator('.strip .whose', { hasText: name }).waitFor();
