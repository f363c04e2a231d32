/** Homework against the real server where people sign in: set by a tutor, worked on by learners, closed, reported, marked anew. */
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import type { PaperView, SetView } from '../../shared/homework-views.ts';
import { writeCircuit } from '../../src/circuit/index.ts';
import { fingerprint } from '../../src/generator/index.ts';
import { MISCONCEPTIONS } from '../../src/misconceptions/index.ts';
import { answerBelieving, rightAnswer } from '../../src/questions/index.ts';
import { markAnswer } from '../support/in-english.ts';
import { ownBank } from '../support/own-bank.ts';
import { violations } from './support/axe.ts';
import type { Device } from './support/devices.ts';
import { homeworkDesk } from './support/homework-desk.ts';
import type { Somebody } from './support/homework-server.ts';
import { allSent, answerOne, DESK, installed, openPractice, PHONE } from './support/practising.ts';
import { until } from './support/until.ts';

const HOUR = 3_600_000;

const desk = homeworkDesk(['A. Barley', 'B. Clover', 'C. Dill', 'D. Elder']);

/** A page with the homework open. */
async function at(who: Somebody, options: object, hash: string, seen: string): Promise<Device> {
  const opened = await desk.takeOf(who, options);
  await opened.page.goto(`${desk.server.address}/#/homework${hash}`);
  await opened.page.waitForSelector(seen);
  return opened;
}

const saved = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => document.querySelector('.keeping p')?.textContent === 'Saved.');

const saving = (page: Page, words: RegExp): Promise<unknown> =>
  page.waitForFunction(
    (source) => new RegExp(source).test(document.querySelector('.keeping p')?.textContent ?? ''),
    words.source,
  );

/** The item of a paper that stands there, drawn. */
async function onItem(page: Page, number: number): Promise<void> {
  await page.waitForFunction(
    (wanted) => document.querySelector('.on-paper .title-block')?.textContent?.includes(`Item ${wanted} of`),
    number,
  );
  await page.waitForSelector('.on-paper .lines img');
}

/** Answers the item that is open by its form: with the choice at `index` of each. */
async function fillItem(page: Page, index: number): Promise<void> {
  const items = page.locator('.on-paper fieldset.item');
  for (let item = 0; item < (await items.count()); item++) {
    const radios = items.nth(item).locator('input[type=radio]');
    const count = await radios.count();
    if (count > 0) await radios.nth(Math.min(index, count - 1)).check();
    else await items.nth(item).locator('input[type=text]').fill('24');
  }
}

/** What stands chosen in the item that is open. */
const chosen = (page: Page): Promise<string[]> =>
  page
    .locator('.on-paper fieldset.item input:checked')
    .evaluateAll((inputs) => inputs.map((input) => (input as HTMLInputElement).value));

/** A set that a tutor has issued to the class. */
async function issued(changes: object): Promise<string> {
  const now = Date.now();
  const { set } = (await desk.server.ask(
    desk.server.tutor,
    homeworkRoutes.draftHomework,
    { class: desk.server.classId },
    {
      title: 'Week 40: two supplies',
      skills: ['make-contact', 'break-contact', 'changeover-legs'],
      items: 3,
      level: 'small',
      opensAt: now - HOUR,
      closesAt: now + HOUR,
      ...changes,
    },
  )) as SetView;
  await desk.server.ask(desk.server.tutor, homeworkRoutes.issueHomework, { set: set.id });
  return set.id;
}

/** The answers to a paper that are right, as whoever has the disk knows them. */
const rightOnes = (paper: string) =>
  desk.server.look(async (store) => {
    const kept = await store.homework.paper(paper);
    if (!kept) throw new Error('there is no such paper');
    return kept.paper.items.map(({ question }, item) => ({
      id: `right-${item}`,
      item,
      answer: rightAnswer(question),
      secondsUsed: 20,
    }));
  });

/** What is to be touched by itself, not in running text, and is lower than a finger wants: 44 px. */
const small = (page: Page): Promise<string[]> =>
  page
    .locator(
      '.schedule tbody th a, .item-strip a, .bar .button, .homework .button, .row > a, .tick, .field input, .field select, .choice',
    )
    .evaluateAll((targets) =>
      targets
        .filter((target) => {
          const { width, height } = target.getBoundingClientRect();
          return width > 0 && height < 43.5;
        })
        .map((target) => target.outerHTML.slice(0, 160)),
    );

describe('a set from its making to its report', () => {
  const set = { id: '' };

  it('is made, sampled and issued by a tutor in a few steps', async () => {
    const { page } = await at(desk.server.tutor, DESK, '', '.homework h1');
    await page.getByRole('link', { name: 'New set' }).click();
    await page.getByLabel('Title', { exact: true }).fill('Week 41: make and break');
    // What is missing is said, and nothing that was typed is lost.
    await page.getByRole('button', { name: 'Keep as draft' }).click();
    await page.waitForSelector('.set-form .refused');
    expect(await page.getByLabel('Title', { exact: true }).inputValue()).toBe('Week 41: make and break');
    await page.getByLabel('Make and break', { exact: true }).check();
    expect(await page.locator('.of-topic input:checked').count()).toBe(3);
    await page.getByLabel('Items', { exact: true }).fill('5');
    await page.getByLabel('Marks for each').fill('2');
    await page.getByLabel('Size').selectOption('small');
    await page.getByLabel('Help').selectOption('hints');
    const times = await page
      .locator('input[type=datetime-local]')
      .evaluateAll((fields) => fields.map((field) => (field as HTMLInputElement).value));
    expect(times[1]).toMatch(/T20:00$/);
    await page.getByRole('button', { name: 'Keep as draft' }).click();

    await page.getByRole('link', { name: 'Sample paper' }).click();
    await page.waitForSelector('.shown-item .lines img');
    expect(await page.locator('.shown-item').count()).toBe(5);
    // Every item has its right answers, and nothing is called wrong.
    expect(await page.locator('.shown-item .verdict.right').count()).toBeGreaterThanOrEqual(5);
    expect(await page.locator('.shown-item .verdict.wrong').count()).toBe(0);
    const titles = (): Promise<string[]> => page.locator('.shown-item h2').allTextContents();
    const first = await titles();
    await page.getByRole('link', { name: 'Another sample' }).click();
    await page.waitForFunction(() =>
      document.querySelector('.sheet-head')?.textContent?.includes('Sample paper 2'),
    );
    await page.waitForSelector('.shown-item');
    expect(await titles()).not.toEqual(first);
    await page.getByRole('link', { name: 'Back to the set' }).click();

    // It is asked once more, with what can't be changed after; looking at it again issues nothing.
    await page.getByRole('button', { name: 'Issue to the class' }).click();
    const asked = page.locator('.sure');
    await asked.getByText(/Issue “Week 41: make and break”\?/).waitFor();
    expect(await asked.textContent()).toMatch(
      /stays as it is: skills, items, marks, opening time, attempts, help, supervision and when marks are shown/,
    );
    await page.getByRole('button', { name: 'Look at it again' }).click();
    await asked.waitFor({ state: 'detached' });
    expect(
      await desk.server.look(
        async (store) => (await store.homework.setsOf([desk.server.classId]))[0]?.issuedAt,
      ),
    ).toBe(null);
    await page.getByRole('button', { name: 'Issue to the class' }).click();
    await page.getByRole('button', { name: 'Issue it as it is' }).click();
    // Papers can be printed at once: those that aren't made yet are made for it.
    const printed = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Papers to print' }).click();
    expect((await printed).suggestedFilename()).toBe('week-41-make-and-break-papers.pdf');
    await page.getByText('All 4 papers are made.').waitFor();
    await page.waitForSelector('.schedule .code');
    expect(await page.getByText('not begun').count()).toBe(4);
    set.id = new URL(page.url()).hash.split('.').at(-1) ?? '';
  });

  it('gives two learners different circuits in every place', async () => {
    const papers = await Promise.all(
      desk.server.learners
        .slice(0, 2)
        .map((who) => desk.server.ask(who, homeworkRoutes.beginPaper, { set: set.id }) as Promise<PaperView>),
    );
    const [one, other] = papers.map(({ paper }) => paper.items.map(({ question }) => question.circuit));
    expect(one).toHaveLength(5);
    one?.forEach((circuit, place) => {
      expect(circuit).not.toEqual(other?.[place]);
    });
    const circuits = await desk.server.look(async (store) =>
      Promise.all(
        papers.map(async ({ id }) =>
          (await store.homework.paper(id))?.paper.items.map(({ circuit }) => circuit),
        ),
      ),
    );
    expect(new Set(circuits.flat()).size).toBe(10);
  });

  it('is told to a learner who has never looked there, in practice, and leads there', async () => {
    const newcomer = desk.server.learners[2];
    if (!newcomer) throw new Error('no third learner');
    const { page } = await desk.takeOf(newcomer, PHONE);
    await openPractice(page, desk.server.address);
    const told = page.locator('.to-do a');
    await told.waitFor();
    expect(await told.textContent()).toMatch(/^Homework is open: “Week 41: make and break” until \S/);
    await told.tap();
    await page.getByRole('button', { name: 'Begin', exact: true }).waitFor();
  });

  it('is worked on by touch on a phone over a lost network and a reload, and handed in', async () => {
    const [learner] = desk.server.learners;
    if (!learner) throw new Error('no learner');
    const { context, page } = await at(learner, PHONE, '', '.set-list');
    await installed(page);
    await page.getByRole('link', { name: 'Go on', exact: true }).tap();
    await page.locator('.schedule tbody a').first().tap();
    await onItem(page, 1);

    // On the drawing, where it can be, by touch.
    const spots = page.locator('.on-paper button.spot');
    for (const spot of await spots.all()) await spot.tap();
    expect(await page.locator('.on-paper .verdict').count()).toBe(0);
    await fillItem(page, 0);
    await page.getByRole('button', { name: /^Hint/ }).tap();
    await page.waitForSelector('.on-paper .hint:not(.empty)');
    await saved(page);
    await page.getByRole('link', { name: 'Next', exact: true }).tap();
    await onItem(page, 2);
    await fillItem(page, 1);
    await saved(page);

    // The network goes, and the server with it; working goes on, over a reload too.
    await desk.server.kill();
    await context.setOffline(true);
    await page.getByRole('link', { name: 'Next', exact: true }).tap();
    await onItem(page, 3);
    await fillItem(page, 0);
    await saving(page, /kept on this device, waiting for the network/);
    const third = await chosen(page);
    expect(third.length).toBeGreaterThan(0);
    await page.reload();
    await onItem(page, 3);
    expect(await chosen(page)).toEqual(third);
    await page.getByRole('link', { name: 'Back', exact: true }).tap();
    await onItem(page, 2);
    await fillItem(page, 0);
    const second = await chosen(page);
    await page.getByRole('link', { name: /^Item 5/ }).tap();
    await onItem(page, 5);
    // It can't be handed in now, and says what happens to what was answered.
    await page.getByRole('link', { name: 'Look over', exact: true }).tap();
    await page.getByRole('button', { name: 'Hand in', exact: true }).tap();
    await page.getByText('Not answered: items 4 and 5.').waitFor();
    await page.getByRole('button', { name: /^Hand in now/ }).tap();
    await page.getByText('There is no network just now.').waitFor();

    await desk.server.start();
    await context.setOffline(false);
    await page.evaluate(() => dispatchEvent(new Event('online')));
    await saved(page);
    await page.getByRole('button', { name: /^Hand in now/ }).tap();
    await page.getByRole('heading', { name: 'Handed in' }).waitFor();

    const paper = await desk.server.look(async (store) => {
      const head = (await store.homework.papersOf(learner.id)).find((each) => each.set === set.id);
      const answers = await store.homework.answersOf(head?.id ?? '');
      return { head, answers, hints: await store.homework.hintsOf(head?.id ?? '') };
    });
    expect(paper.head?.submittedAt).not.toBeNull();
    expect(paper.hints).toEqual([0]);
    // Each once, in the order in which they were given, and the last of each item as it stood on the phone.
    expect(new Set(paper.answers.map(({ id }) => id)).size).toBe(paper.answers.length);
    const last = (item: number) => paper.answers.findLast((answer) => answer.item === item)?.answer;
    const states = (answer: unknown) => Object.values((answer as { states: Record<string, string> }).states);
    expect(states(last(2))).toEqual(third);
    expect(states(last(1))).toEqual(second);
    expect(last(3)).toBeUndefined();
    expect(last(4)).toBeUndefined();

    // Nothing may be looked through before it closes.
    await page.getByRole('link', { name: 'All my homework' }).tap();
    await page.getByText(/Marks and answers from/).waitFor();
  });

  it('closes by the clock of the server: what was saved counts, what comes later is refused in words', async () => {
    const [, learner] = desk.server.learners;
    if (!learner) throw new Error('no second learner');
    const { page } = await at(learner, PHONE, '', '.set-list');
    await page.getByRole('link', { name: 'Go on', exact: true }).tap();
    await page.locator('.schedule tbody a').first().tap();
    await onItem(page, 1);
    await fillItem(page, 0);
    await saved(page);
    await desk.server.ahead(8 * 24 * HOUR);
    await page.getByRole('link', { name: 'Next', exact: true }).tap();
    await onItem(page, 2);
    await fillItem(page, 0);
    await page.getByRole('link', { name: 'All items', exact: true }).tap();
    await page.getByText('These answers did not count:').waitFor();
    expect(await page.locator('.refused li').allTextContents()).toEqual([expect.stringMatching(/^Item 2: /)]);
    await page.getByRole('heading', { name: 'Closed', exact: true }).waitFor();

    await page.getByRole('link', { name: 'See the marks' }).tap();
    await page.waitForSelector('.schedule .verdict');
    expect(await page.locator('.sheet-head').textContent()).toMatch(/1 of 5 answered/);
    // What is to be revised leads to its lesson and to practice of just that.
    await page.getByRole('link', { name: 'practise it' }).first().tap();
    await page.getByText('Only this skill, until you choose otherwise').waitFor();
  });

  it('is looked through by its learner item by item, with what is right, why, and the run', async () => {
    const [learner] = desk.server.learners;
    if (!learner) throw new Error('no learner');
    const { page } = await at(learner, PHONE, '', '.set-list');
    await page.getByRole('link', { name: 'Look through' }).tap();
    await page.locator('.schedule tbody a').first().tap();
    await page.waitForSelector('.looked-through .why li');
    await page.waitForSelector('.looked-through .transport, .looked-through .lines img');
    expect(await page.locator('.looked-through .talk').textContent()).toMatch(/of 2 marks/);
    await page.getByText('The hint was asked for.').waitFor();
    // Wrong and right are told apart in words, not by a sign or a colour alone.
    const verdicts = page.locator('.looked-through .marked-item .verdict');
    expect(await verdicts.count()).toBeGreaterThan(0);
    for (const verdict of await verdicts.allTextContents())
      expect(verdict).toMatch(/^(?:Right: \S.*|(?:left out|\S.* is wrong)\s*right: \S.*)$/);
    await page.getByRole('link', { name: 'Next', exact: true }).tap();
    await page.waitForFunction(() =>
      document.querySelector('.looked-through .title-block')?.textContent?.includes('Item 2 of 5'),
    );
  });

  it('is reported on, and a mark is given anew with a reason that the learner reads', async () => {
    const [learner] = desk.server.learners;
    if (!learner) throw new Error('no learner');
    const { page } = await at(desk.server.tutor, DESK, `/report.${set.id}`, '.schedule.grid');
    expect(await page.locator('.sheet-head').textContent()).toMatch(/2 of 4 handed in/);
    const looked = await page.locator('.homework').textContent();
    expect(looked).toMatch(/C\. Dill, D\. Elder: handed in nothing/);
    const rows = await page.locator('.schedule.grid tbody th').allTextContents();
    expect(rows).toContain('C. Dill nothing handed in');
    expect(looked).toMatch(/B\. Clover: answered only 1 of 5 items/);
    expect(looked).toMatch(/Facility: the mean mark/);
    await page.locator('.schedule.grid').getByRole('link', { name: 'A. Barley' }).click();
    await page.waitForSelector('.schedule .verdict');
    const total = (): Promise<string | null> => page.locator('.sheet-head').textContent();
    const before = await total();
    await page.locator('.schedule tbody a').nth(4).click();
    await page.getByRole('heading', { name: 'Give it another mark' }).waitFor();
    // More than the item has is refused, and nothing that was typed is lost.
    await page.getByLabel('Marks of 2').fill('1.5');
    await page.getByLabel(/^Reason/).fill('Drawn rightly by hand beside the sheet.');
    // Somebody else has given it marks meanwhile: that is told, shown, and takes nothing of what was typed.
    const [, , paper = ''] = new URL(page.url()).hash.split('.');
    await desk.server.ask(
      desk.server.tutor,
      homeworkRoutes.overrideMark,
      { paper },
      { item: 4, earned: 1, reason: 'Half of it.', known: 0 },
    );
    await page.getByRole('button', { name: 'Keep this mark' }).click();
    await page
      .getByRole('alert')
      .getByText('T. Fennel has given item 5 1 of 2 marks: “Half of it.”')
      .waitFor();
    await page.getByText(/Marked by the tutor on .* with 1: Half of it/).waitFor();
    expect(await page.getByLabel('Marks of 2').inputValue()).toBe('1.5');
    expect(await page.getByLabel(/^Reason/).inputValue()).toBe('Drawn rightly by hand beside the sheet.');
    await page.getByRole('button', { name: 'Keep this mark' }).click();
    await page.getByText(/Marked by the tutor on .* with 1.5: Drawn rightly by hand/).waitFor();
    await page.getByRole('link', { name: 'All items', exact: true }).click();
    await page.waitForSelector('.schedule .verdict');
    expect(await total()).not.toBe(before);
    const marked = await desk.server.look(async (store) => {
      const head = (await store.homework.papersOf(learner.id)).find((each) => each.set === set.id);
      return store.homework.markOf(head?.id ?? '');
    });
    expect(marked?.items[4]?.overrides).toMatchObject([
      { earned: 1, reason: 'Half of it.' },
      { earned: 1.5, reason: 'Drawn rightly by hand beside the sheet.', by: desk.server.tutor.id },
    ]);
    // The first mark stands beside it.
    expect(marked?.items[4]?.mark.share).toBe(0);
  });

  it('takes marks from paper by keyboard alone, a paper after another', async () => {
    const { page } = await at(desk.server.tutor, DESK, `/set.${set.id}`, '.schedule .code');
    const codeOf = async (name: string): Promise<string> =>
      (await page.locator('tr', { hasText: name }).locator('.code').textContent()) ?? '';
    const codes = [await codeOf('C. Dill'), await codeOf('D. Elder')];
    await page.getByRole('link', { name: /^Type in marks/ }).click();
    await page.getByLabel('Code on the paper').focus();
    for (const [index, code] of codes.entries()) {
      await page.keyboard.type(code.toLowerCase());
      await page.getByText(index === 0 ? 'C. Dill' : 'D. Elder', { exact: true }).waitFor();
      await page.keyboard.press('Enter');
      // 2, 1.5, left out, 0, 2
      for (const mark of ['2', '1,5', '', '0', '2']) {
        if (mark) await page.keyboard.type(mark);
        await page.keyboard.press('Enter');
      }
      await page.getByText(`${index === 0 ? 'C. Dill' : 'D. Elder'}: 5.5 of 10 marks`).waitFor();
      await page.waitForFunction(() => document.activeElement?.matches('.typed .field input'));
    }
    // A mark that an item hasn't got is told at its place, and nothing is sent.
    await page.keyboard.type(codes[0] ?? '');
    await page.keyboard.press('Enter');
    for (const mark of ['3', '1', '1', '1', '1']) {
      await page.keyboard.type(mark);
      await page.keyboard.press('Enter');
    }
    await page.getByText('Item 1 has marks from 0 to 2. Correct 3.').waitFor();
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).value)).toBe('3');
  });
});

describe('practice of somebody in a class', () => {
  it('is asked from questions that the server issued, and what is answered to them proves something there', async () => {
    await desk.server.ahead(0);
    const who = desk.server.learners[3];
    if (!who) throw new Error('no fourth learner');
    const { page } = await desk.takeOf(who, PHONE);
    await openPractice(page, desk.server.address);
    // The first question may be there before the supply is.
    let proofs: readonly object[] = [];
    for (let question = 0; question < 8 && proofs.length === 0; question++) {
      await answerOne(page);
      await allSent(page);
      proofs = await desk.server.look((store) => store.proofsOf(who.id));
    }
    expect(proofs[0]).toMatchObject({ source: 'issued' });
  });
});

describe('a circuit of a paper that is open', () => {
  /** The page knows of it. */
  const guarded = (page: Page, { id }: Somebody, paper: string): Promise<void> =>
    until(
      page,
      ([name, wanted]) =>
        new Promise<boolean>((resolve) => {
          const opening = indexedDB.open(name);
          opening.onsuccess = () => {
            const asked = opening.result.transaction('values').objectStore('values').get('guarded');
            asked.onsuccess = () => {
              opening.result.close();
              const papers = asked.result as { paper: string }[] | undefined;
              resolve(papers?.some((each) => each.paper === wanted) === true);
            };
          };
        }),
      [`polewise-person-${id}`, paper] as const,
    );
  const [told, onward] = [/homework paper of yours that is open/, 'Go on with your homework'] as const;

  it('is drawn in Write and not run; the way leads to the paper, and the tutor sees that it was tried', async () => {
    await desk.server.ahead(0);
    const set = await issued({ title: 'Week 44: written off' });
    const [, who] = desk.server.learners;
    if (!who) throw new Error('no second learner');
    const view = (await desk.server.ask(who, homeworkRoutes.beginPaper, { set })) as PaperView;
    const circuit = await desk.server.look(
      async (store) => (await store.homework.paper(view.id))?.paper.items[0]?.question.circuit,
    );
    if (!circuit) throw new Error('the paper has no item');
    const { page } = await desk.takeOf(who, PHONE);
    await openPractice(page, desk.server.address);
    await guarded(page, who, view.id);
    await page.goto(`${desk.server.address}/#/bench`);
    await page.locator('#notation').fill(writeCircuit(circuit));
    await page.locator('.bench .caution').getByText(told).waitFor();
    expect(await page.locator('.bench .lines img').count()).toBeGreaterThan(0);
    expect(await page.locator('.bench .readings').count()).toBe(0);
    await page.getByRole('link', { name: onward }).tap();
    await page.getByRole('heading', { name: 'Week 44: written off' }).waitFor();

    const { page: tutors } = await at(desk.server.tutor, DESK, `/set.${set}`, '.schedule .tried');
    expect(await tutors.locator('.schedule .tried').allTextContents()).toEqual(['; tried 1 item elsewhere']);
    await tutors.getByRole('link', { name: 'Report', exact: true }).click();
    await tutors.getByRole('heading', { name: 'Tried elsewhere' }).waitFor();
    await tutors.getByText('B. Clover: 1 item', { exact: true }).waitFor();
  });

  it('is drawn at rest in Try it, and not run', async () => {
    const who = desk.server.learners[2];
    if (!who) throw new Error('no third learner');
    const { page } = await desk.takeOf(who, PHONE);
    // As if the banks’ circuits were on a paper.
    const circuits = ownBank().topics.flatMap((topic) =>
      topic.circuits.map((each) => fingerprint(each.circuit)),
    );
    const papers = [{ paper: 'p'.repeat(21), title: 'Any', until: Date.now() + HOUR, circuits }];
    await page.route('**/api/guarded-circuits', (route) => route.fulfill({ json: { papers } }));
    await openPractice(page, desk.server.address);
    await guarded(page, who, 'p'.repeat(21));
    await page.goto(`${desk.server.address}/#/try`);
    await page.locator('.try .caution').getByText(told).waitFor();
    await page.locator('.try .lines img').waitFor();
    expect(await page.locator('.try .acts, .try .readings').count()).toBe(0);
    await page.getByRole('link', { name: onward }).waitFor();
  });
});

describe('a wrong idea that shows on a paper', () => {
  it('is told in the report with the drawing on which it showed, and in the review of who had it', async () => {
    await desk.server.ahead(0);
    const id = await issued({ title: 'Week 43', items: 12, review: 'after-submitting' });
    const who = desk.server.learners[3];
    if (!who) throw new Error('no fourth learner');
    const view = (await desk.server.ask(who, homeworkRoutes.beginPaper, { set: id })) as PaperView;
    const shown = await desk.server.look(async (store) => {
      const items = (await store.homework.paper(view.id))?.paper.items ?? [];
      for (const [item, { question }] of items.entries())
        for (const { id: idea } of MISCONCEPTIONS) {
          const answer = answerBelieving(question, idea);
          const mark = answer && markAnswer(question, answer);
          if (answer && mark?.misconceptions.length === 1)
            return { item, answer, idea: mark.misconceptions[0]!.idea, question };
        }
      throw new Error('no item of the paper tells one idea from the others');
    });
    const answers = [{ id: 'mistaken', item: shown.item, answer: shown.answer, secondsUsed: 9 }];
    await desk.server.ask(who, homeworkRoutes.saveAnswers, { paper: view.id }, { answers });
    await desk.server.ask(who, homeworkRoutes.submitPaper, { paper: view.id });

    const tutor = await at(desk.server.tutor, DESK, `/report.${id}`, '.schedule.grid');
    await tutor.page.locator('.set-list').getByText(shown.idea).waitFor();
    await tutor.page.getByText('An example for the board').click();
    await tutor.page.waitForSelector('.set-list .lines img');
    await tutor.page.getByText(/^This was answered:/).waitFor();
    expect(await violations(tutor.page)).toEqual([]);

    const learner = await at(who, PHONE, `/review.${view.id}.${shown.item + 1}`, '.looked-through .idea');
    await learner.page.locator('.looked-through .idea').getByText(shown.idea).waitFor();
  });
});

describe('the homework of a class over several sets', () => {
  it('shows the term and who can do what, and gives files away', async () => {
    await desk.server.ahead(0);
    const id = await issued({ review: 'after-submitting' });
    for (const [index, who] of desk.server.learners.slice(0, 3).entries()) {
      const view = (await desk.server.ask(who, homeworkRoutes.beginPaper, { set: id })) as PaperView;
      const answers = (await rightOnes(view.id)).slice(0, 3 - index);
      await desk.server.ask(who, homeworkRoutes.saveAnswers, { paper: view.id }, { answers });
      await desk.server.ask(who, homeworkRoutes.submitPaper, { paper: view.id });
    }
    const { page } = await at(desk.server.tutor, DESK, `/term.${desk.server.classId}`, '.schedule.grid');
    expect(await page.locator('.schedule.grid').count()).toBe(2);
    await page.getByRole('link', { name: 'Sets of the class' }).click();
    await page.getByRole('link', { name: 'Who can do what' }).click();
    await page.waitForSelector('.stands');
    const evidence = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Evidence of A. Barley, PDF' }).click();
    expect((await evidence).suggestedFilename()).toBe('a-barley-evidence.pdf');
    await page.goto(`${desk.server.address}/#/homework/set.${id}`);
    await page.getByText('All 4 papers are made.').waitFor();
    for (const [label, ending] of [
      ['Papers to print', 'papers.pdf'],
      ['Answers to all papers', 'answers.pdf'],
      ['Marks as a table (CSV)', 'marks.csv'],
      ['Statements (xAPI)', 'statements.json'],
      ['Sample as a package (QTI 3.0)', 'qti-3.0.zip'],
      ['Sample as a package (QTI 2.2)', 'qti-2.2.zip'],
    ] as const) {
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name: label }).click();
      expect((await download).suggestedFilename()).toBe(`week-40-two-supplies-${ending}`);
    }
  });
});

describe.each(['light', 'dark'] as const)('in the %s theme', (colorScheme) => {
  it.each([
    ['on a phone', PHONE],
    ['on a desk', DESK],
  ])('axe-core finds nothing on any screen of homework %s', async (_, size) => {
    await desk.server.ahead(0);
    const closed = await issued({ title: 'Week 39', review: 'after-submitting', help: 'hints', attempts: 2 });
    const [first] = desk.server.learners;
    if (!first) throw new Error('no learner');
    const view = (await desk.server.ask(first, homeworkRoutes.beginPaper, { set: closed })) as PaperView;
    const answers = (await rightOnes(view.id)).slice(0, 2);
    await desk.server.ask(first, homeworkRoutes.saveAnswers, { paper: view.id }, { answers });
    await desk.server.ask(first, homeworkRoutes.submitPaper, { paper: view.id });
    const going = (await desk.server.ask(first, homeworkRoutes.beginPaper, { set: closed })) as PaperView;
    const found: string[] = [];
    const look = async (page: Page, name: string): Promise<void> => {
      found.push(...(await violations(page)).map((text) => `${name}: ${text}`));
      expect(
        await page.evaluate(() => document.documentElement.scrollWidth - innerWidth),
        name,
      ).toBeLessThanOrEqual(0);
      if (size === PHONE) found.push(...(await small(page)).map((text) => `${name}: small: ${text}`));
    };
    const walk = async (
      who: Somebody,
      screens: readonly (readonly [string, string, ((page: Page) => Promise<unknown>)?])[],
    ): Promise<void> => {
      const { page } = await desk.takeOf(who, { ...size, colorScheme });
      await page.goto(`${desk.server.address}/#/homework`);
      await page.waitForSelector('.homework h1');
      for (const [hash, seen, further] of screens) {
        await page.goto(`${desk.server.address}/#/homework${hash}`);
        await page.waitForSelector(seen);
        await further?.(page);
        await look(page, hash || 'the beginning');
      }
    };
    await walk(first, [
      ['', '.set-list'],
      [
        `/paper.${going.id}`,
        '.hand-in',
        (page) => page.getByRole('button', { name: 'Hand in', exact: true }).click(),
      ],
      [`/paper.${going.id}.1`, '.on-paper .lines img'],
      [`/review.${view.id}`, '.schedule .verdict'],
      [`/review.${view.id}.1`, '.looked-through .why li'],
    ]);
    await walk(desk.server.tutor, [
      ['', '.schedule'],
      [
        `/new.${desk.server.classId}`,
        '.set-form',
        async (page) => {
          await page.getByLabel('Title', { exact: true }).fill('Week 42');
          await page.getByRole('button', { name: 'Keep as draft' }).click();
          await page.waitForSelector('.set-form .refused');
        },
      ],
      [`/set.${closed}`, '.schedule .share'],
      [`/sample.${closed}.1`, '.shown-item .lines img'],
      [`/report.${closed}`, '.schedule.grid'],
      [`/marked.${closed}.${view.id}`, '.schedule .verdict'],
      [`/marked.${closed}.${view.id}.3`, '.own-mark'],
      [`/typed.${closed}`, '.typed'],
      [`/term.${desk.server.classId}`, '.schedule.grid'],
      [`/competence.${desk.server.classId}`, '.stands'],
    ]);
    expect(found).toEqual([]);
  });
});
