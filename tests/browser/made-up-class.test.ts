/** Where people sign in, in the made-up language: the way in, a learner's homework, and what a tutor has of a class. */
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import { peopleRoutes } from '../../shared/api-people.ts';
import type { PaperView, SetView } from '../../shared/homework-views.ts';
import { builtPageMadeUp } from '../support/built.ts';
import { MADE_UP } from '../support/made-up-language.ts';
import { comeFirst } from './support/coming-in.ts';
import { homeworkDesk } from './support/homework-desk.ts';
import { notSaid } from './support/not-said.ts';
import { asking, DESK, PHONE } from './support/practising.ts';

const HOUR = 3_600_000;
const TITLE = 'Week 40: two supplies';

const desk = homeworkDesk(['A. Barley', 'B. Clover'], builtPageMadeUp);

/** What people and classes are called, the longest first: one may stand in another. */
const KNOWN = [...['T. Fennel', 'A. Barley', 'B. Clover', 'Flour line, autumn', 'a test', TITLE]].sort(
  (one, other) => other.length - one.length,
);

type Step = readonly [string, (page: Page) => Promise<unknown>];

const to = async (page: Page, hash: string, seen: string): Promise<void> => {
  await page.goto(`${desk.server.address}/#/${hash}`);
  await page.waitForSelector(seen);
};

/** A class's code is letters and digits by chance, words among them. */
async function codeOfClass(): Promise<string> {
  const { tutor, classId } = desk.server;
  const told = await desk.server.ask(tutor, peopleRoutes.class, { class: classId });
  return (told as { readonly joiningCode: string }).joiningCode;
}

async function walk(page: Page, steps: readonly Step[]): Promise<string[]> {
  const known = [await codeOfClass(), ...KNOWN];
  const found: string[] = [];
  for (const [name, open] of steps) {
    await open(page);
    const out = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    found.push(...(await notSaid(page, known)).map((text) => `${name}: ${text}`));
    if (out > 0) found.push(`${name}: sticks out by ${out} pixels`);
  }
  return found;
}

/** A set that the class has. */
async function issued(): Promise<string> {
  const now = Date.now();
  const { set } = (await desk.server.ask(
    desk.server.tutor,
    homeworkRoutes.draftHomework,
    { class: desk.server.classId },
    {
      title: TITLE,
      skills: ['make-contact', 'break-contact', 'changeover-legs'],
      items: 3,
      level: 'small',
      review: 'after-submitting',
      opensAt: now - HOUR,
      closesAt: now + HOUR,
    },
  )) as SetView;
  await desk.server.ask(desk.server.tutor, homeworkRoutes.issueHomework, { set: set.id });
  return set.id;
}

it('somebody comes in in it', async () => {
  const code = await codeOfClass();
  const { page } = await desk.take({ ...PHONE, locale: MADE_UP });
  const found = await walk(page, [
    ['the very first visit', (at) => to(at, '', '.entry-sheet')],
    [
      'no key',
      async (at) => {
        await at.locator('button.main').click();
        await at.waitForSelector('.amiss');
      },
    ],
    [
      'sign in',
      async (at) => {
        await comeFirst((await desk.take(DESK)).page, desk.server, 'Iris Kalmar');
        await at.reload();
        await at.waitForSelector('input[type=password]');
      },
    ],
    [
      'sign in, nothing typed',
      async (at) => {
        await at.locator('button.main').click();
        await at.waitForSelector('.amiss');
      },
    ],
    ['a link', (at) => to(at, 'enter/abc', '.entry-sheet .row .main')],
    [
      'a code that is none',
      async (at) => {
        await to(at, 'join', '.entry.code');
        await at.locator('.entry.code input').fill('12');
        await at.locator('button.main').click();
        await at.waitForSelector('.amiss');
      },
    ],
    [
      'no name',
      async (at) => {
        await at.locator('.entry.code input').fill(code);
        await at.locator('button.main').click();
        await at.waitForSelector('input[name=name]');
        await at.locator('button.main').click();
        await at.waitForSelector('.amiss');
      },
    ],
    [
      'a short password',
      async (at) => {
        await at.locator('input[name=name]').fill('A. Barley');
        await at.locator('button.main').click();
        await at.locator('input[name=new-password]').fill('short');
        await at.locator('button.main').click();
        await at.waitForSelector('.amiss');
      },
    ],
  ]);
  expect(found).toEqual([]);
});

it('a learner has homework in it', async () => {
  const [who] = desk.server.learners;
  if (!who) throw new Error('no learner');
  await issued();
  const done = await issued();
  const view = (await desk.server.ask(who, homeworkRoutes.beginPaper, { set: done })) as PaperView;
  await desk.server.ask(who, homeworkRoutes.submitPaper, { paper: view.id });
  const { page } = await desk.takeOf(who, { ...PHONE, locale: MADE_UP });
  const found = await walk(page, [
    [
      'practice',
      async (at) => {
        await at.goto(desk.server.address);
        await asking(at);
        await at.waitForSelector('.to-do');
      },
    ],
    ['account', (at) => to(at, 'account', '.account .roll')],
    ['homework', (at) => to(at, 'homework', '.set-entry')],
  ]);
  expect(found).toEqual([]);
});

it('a tutor has classes and homework in it', async () => {
  const { classId, tutor } = desk.server;
  const set = await issued();
  const { page } = await desk.takeOf(tutor, { ...PHONE, locale: MADE_UP });
  const found = await walk(page, [
    ['classes', (at) => to(at, 'classes', '.roll')],
    ['new class', (at) => to(at, 'classes/new', '.entry-sheet')],
    ['the code', (at) => to(at, `classes/${classId}.slips`, '.big-code')],
    ['learners by name', (at) => to(at, `classes/${classId}.add`, 'textarea')],
    ['members', (at) => to(at, `classes/${classId}.members`, '.roll')],
    ['a roster', (at) => to(at, `classes/${classId}.roster`, 'input[type=file]')],
    ['a change', (at) => to(at, `classes/${classId}.change`, 'main .entry')],
    ['sets', (at) => to(at, `homework/class.${classId}`, '.schedule')],
    ['a new set', (at) => to(at, `homework/new.${classId}`, '.set-form')],
    ['a set', (at) => to(at, `homework/set.${set}`, '.schedule')],
    ['a report', (at) => to(at, `homework/report.${set}`, '.homework h1')],
    ['answers typed', (at) => to(at, `homework/typed.${set}`, '.homework h1')],
    ['a term', (at) => to(at, `homework/term.${classId}`, '.homework h1')],
    ['who can do what', (at) => to(at, `homework/competence.${classId}`, '.homework h1')],
  ]);
  expect(found).toEqual([]);
});
