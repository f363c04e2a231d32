/** WCAG 2.2 A and AA as far as axe-core can tell, on every screen where people come in and classes are looked after. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { violations } from './support/axe.ts';
import { classDesk } from './support/class-desk.ts';
import { PASSWORD, signIn } from './support/coming-in.ts';
import { asking, DESK, PHONE } from './support/practising.ts';

const at = classDesk();

const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        'button, nav a, a.button, .strip a, select, summary, label.choice, input:not([type=radio], [type=checkbox], .away)',
      ),
    ]
      .filter((element) => element.checkVisibility())
      .map((element) => ({ text: element.outerHTML.slice(0, 120), box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.height < 43.5 || box.width < 43.5)
      .map(({ text, box }) => `${text} ${box.width} x ${box.height}`),
  );

/** Looks at what stands there: what axe-core finds, what sticks out, and on a phone what is too small to touch. */
async function look(page: Page, name: string, phone: boolean): Promise<string[]> {
  const out = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  return [
    ...(await violations(page)),
    ...(out > 0 ? [`sticks out by ${out} pixels`] : []),
    ...(phone ? await tooSmall(page) : []),
  ].map((text) => `${name}: ${text}`);
}

const goTo = async (page: Page, hash: string): Promise<void> => {
  await page.goto(`${at.server.address}/${hash}`);
};

type Step = readonly [string, (page: Page) => Promise<unknown>];

/** The ways in, for somebody new with this code. */
const entering = (code: string, name: string): readonly Step[] => [
  ['sign in', (page) => goTo(page, '').then(() => page.getByRole('heading', { name: 'Sign in' }).waitFor())],
  [
    'sign in, refused',
    async (page) => {
      await signIn(page, 'nobody.here');
      await page.locator('.amiss').waitFor();
    },
  ],
  [
    'a code that is none',
    async (page) => {
      await goTo(page, '#/join');
      await page.getByLabel('Joining code').fill('12');
      await page.getByRole('button', { name: 'Next' }).click();
      await page.locator('.amiss').waitFor();
    },
  ],
  [
    'a name',
    async (page) => {
      await page.getByLabel('Joining code').fill(code);
      await page.getByRole('button', { name: 'Next' }).click();
      await page.getByLabel('Your name').waitFor();
    },
  ],
  [
    'name and password',
    async (page) => {
      await page.getByLabel('Your name').fill(name);
      await page.getByRole('button', { name: 'Next' }).click();
      await page.getByRole('button', { name: 'Join the class' }).click();
      await page.locator('.amiss').waitFor();
    },
  ],
  [
    'practice, by name',
    async (page) => {
      await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
      await page.getByRole('button', { name: 'Join the class' }).click();
      await asking(page);
    },
  ],
  ['account', (page) => goTo(page, '#/account').then(() => page.locator('.account .roll').waitFor())],
  [
    'one class more',
    async (page) => {
      await goTo(page, `#/join/${code}`);
      await page.getByRole('button', { name: 'Next' }).click();
      await page.getByRole('button', { name: 'Join the class' }).waitFor();
    },
  ],
  [
    'a link',
    (page) => goTo(page, '#/enter/abc').then(() => page.getByRole('button', { name: 'Come in' }).waitFor()),
  ],
];

/** What tutors and administrators have of a class. */
const teaching = (id: string): readonly Step[] => {
  const part = (name: string) => (page: Page) => goTo(page, `#/classes/${id}.${name}`);
  return [
    ['classes', (page) => goTo(page, '#/classes').then(() => page.locator('.roll').first().waitFor())],
    ['new class', (page) => goTo(page, '#/classes/new').then(() => page.getByLabel('Intake').waitFor())],
    ['the code', (page) => part('slips')(page).then(() => page.locator('.big-code').waitFor())],
    [
      'a new code, asked',
      async (page) => {
        await page.getByRole('button', { name: 'New code…' }).click();
        await page.locator('.sure').waitFor();
      },
    ],
    [
      'links',
      async (page) => {
        await part('add')(page);
        await page.getByLabel('Names, one on each line').fill('Lo Venn\nMae Ost');
        await page.getByRole('button', { name: 'Add 2 learners' }).click();
        await page.locator('.roll code').nth(1).waitFor();
      },
    ],
    [
      'members',
      async (page) => {
        await part('members')(page);
        await page.getByRole('button', { name: 'Look after Lo Venn' }).first().click();
        await page.getByRole('button', { name: 'A new link…' }).click();
        await page.getByRole('button', { name: 'Make a link' }).click();
        await page.locator('.roll .roll code').waitFor();
      },
    ],
    [
      'roster',
      async (page) => {
        await part('roster')(page);
        const buffer = Buffer.from('name,manner\nNell Roe,learner\nOdd One,captain\n');
        await page
          .locator('input[type=file]')
          .setInputFiles([{ name: 'r.csv', mimeType: 'text/csv', buffer }]);
        await page.locator('.mistakes').waitFor();
      },
    ],
    [
      'a change',
      async (page) => {
        await part('change')(page);
        await page.getByRole('button', { name: 'End the class…' }).click();
        await page.locator('.sure').waitFor();
      },
    ],
    [
      'people',
      async (page) => {
        await goTo(page, '#/classes/people');
        await page.getByRole('button', { name: 'Look after Lo Venn' }).first().click();
        await page.getByRole('button', { name: 'Erase this person…' }).click();
        await page.locator('.sure').waitFor();
      },
    ],
    [
      'signing in again',
      async (page) => {
        await page.context().clearCookies();
        await page.getByRole('button', { name: 'Find' }).click();
        await page.locator('dialog[open]').waitFor();
      },
    ],
  ];
};

describe.each(['light', 'dark'] as const)('in the %s theme', (colorScheme) => {
  it.each([
    ['a phone', PHONE],
    ['a desk', DESK],
  ])(
    'axe-core finds nothing where people come in and classes are looked after, on %s',
    async (size, options) => {
      const { code, id } = await at.newClass(`Ice works, ${colorScheme}, ${size}`);
      const phone = size === 'a phone';
      const found: string[] = [];
      const walk = async (page: Page, steps: readonly Step[]): Promise<void> => {
        for (const [name, open] of steps) {
          await open(page);
          found.push(...(await look(page, name, phone)));
        }
      };
      const newcomer = await at.take({ ...options, colorScheme });
      await walk(newcomer.page, entering(code, `Ivo ${colorScheme} ${size}`));
      const tutor = await at.take({ ...options, colorScheme });
      await goTo(tutor.page, '');
      await signIn(tutor.page, 'iris.kalmar');
      await tutor.page.getByRole('heading', { name: 'Classes' }).waitFor();
      await walk(tutor.page, teaching(id));
      expect(found).toEqual([]);
    },
  );
});
