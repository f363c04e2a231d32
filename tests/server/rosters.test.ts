/** Rosters in and out, and the slips that are handed out. */
import { unzipSync } from 'fflate';
import { afterEach, describe, expect, it } from 'vitest';
import { peopleRoutes, type RosterIn } from '../../shared/api-people.ts';
import type { ClassDetail } from '../../shared/people.ts';
import { readCsv, readRoster } from '../../src/homework/index.ts';
import { Browser, type ClassServing, classServing, requestFor, type Somebody } from './class-serving.ts';

let server: ClassServing;
afterEach(() => server.end());
const started = async (): Promise<ClassServing> => {
  server = await classServing();
  return server;
};

const take = (who: Somebody, id: string, body: RosterIn, look = false) =>
  who.browser.call(peopleRoutes.takeRoster, {
    params: { class: id },
    query: `?look=${look ? 'yes' : 'no'}`,
    body,
  });
const give = async (who: Somebody, id: string, format: string) =>
  who.browser.ask(requestFor(peopleRoutes.giveRoster, { class: id }, `?format=${format}`));
const whoIn = ({ members }: ClassDetail) =>
  members.map(({ name, signIn, manner }) => ({ name, signIn, manner }));
const filesOf = (zip: Buffer): Record<string, string> =>
  Object.fromEntries(
    Object.entries(unzipSync(zip)).map(([name, bytes]) => [name, new TextDecoder().decode(bytes)]),
  );

const TABLE = [
  'name,sign-in,manner',
  '"Ferro, Mika",mika.f,learner',
  'Ann-Katrin von Ort,,learner',
  'Noor; Teo,,',
  'Fern,fern,learner',
].join('\r\n');

describe('a roster', () => {
  it('is taken over, is the same taken twice, and is only looked at where that was asked', async () => {
    const { tutor, ownClass } = await started();
    const body = { format: 'csv', text: TABLE } as const;
    const looked = await take(tutor, ownClass.id, body, true);
    expect(looked).toMatchObject({ result: 'taken', kept: false, passedOver: [] });
    expect((await server.store.people.classes.get(ownClass.id))!.learners).toBe(1);
    const first = await take(tutor, ownClass.id, body);
    expect(first).toEqual({ ...looked, kept: true });
    expect(first).toMatchObject({ lines: Array(4).fill({ result: 'new' }) });
    const again = await take(tutor, ownClass.id, body);
    expect(again).toMatchObject({ lines: Array(4).fill({ result: 'already' }) });
    expect((await server.store.people.classes.get(ownClass.id))!.learners).toBe(5);
  });

  it('goes out as a table and comes in again as the same class elsewhere', async () => {
    const { tutor, ownClass } = await started();
    await take(tutor, ownClass.id, { format: 'csv', text: TABLE });
    const reply = await give(tutor, ownClass.id, 'csv');
    expect(reply.headers['content-type']).toBe('text/csv; charset=utf-8');
    const table = readCsv(reply.body);
    expect(table.ok && table.value.columns).toEqual(['id', 'name', 'sign-in', 'manner']);
    expect(reply.body).toContain('Noor; Teo');
    // What a spreadsheet would take for a formula, in some countries behind a semicolon, doesn't come in.
    const formula = TABLE.replace('Noor; Teo', 'Noor;=1');
    expect(await take(tutor, ownClass.id, { format: 'csv', text: formula })).toMatchObject({
      result: 'mistakes',
    });
    const before = await server.store.people.classes.get(ownClass.id);
    await server.end();

    const elsewhere = await started();
    const empty = await elsewhere.admin.browser.call(peopleRoutes.newClass, { body: { title: 'Elsewhere' } });
    await take(elsewhere.admin, empty.id, { format: 'csv', text: reply.body });
    const after = (await elsewhere.store.people.classes.get(empty.id))!;
    const admin = { name: 'Ada Office', signIn: 'ada.office', manner: 'tutor' };
    expect(whoIn(after)).toEqual([admin, ...whoIn(before!)].sort(byName));
  });

  it('goes out as OneRoster 1.1 and comes in again as the same class elsewhere', async () => {
    const { tutor, ownClass } = await started();
    await take(tutor, ownClass.id, { format: 'csv', text: TABLE });
    const reply = await give(tutor, ownClass.id, 'oneroster');
    expect(reply.headers['content-type']).toBe('application/zip');
    const files = filesOf(reply.rawPayload);
    const roster = readRoster(files);
    expect(roster.ok && roster.value.enrollments.map(({ role }) => role).sort()).toEqual([
      ...Array(5).fill('student'),
      'teacher',
    ]);
    const before = await server.store.people.classes.get(ownClass.id);
    await server.end();

    const elsewhere = await started();
    const empty = await elsewhere.admin.browser.call(peopleRoutes.newClass, { body: { title: 'Elsewhere' } });
    await take(elsewhere.admin, empty.id, { format: 'oneroster', files });
    const after = (await elsewhere.store.people.classes.get(empty.id))!;
    const admin = { name: 'Ada Office', signIn: 'ada.office', manner: 'tutor' };
    expect(whoIn(after)).toEqual([admin, ...whoIn(before!)].sort(byName));
  });

  it('comes back to the class it is of without making anybody twice', async () => {
    const { tutor, ownClass } = await started();
    await take(tutor, ownClass.id, { format: 'csv', text: TABLE });
    const files = filesOf((await give(tutor, ownClass.id, 'oneroster')).rawPayload);
    const result = await take(tutor, ownClass.id, { format: 'oneroster', files });
    expect(result).toMatchObject({ lines: Array(6).fill({ result: 'already' }), passedOver: [] });
  });

  it('is not a way for a tutor to others’ learners, nor to make tutors', async () => {
    const { tutor, ownClass, otherLearner, admin } = await started();
    const text = [
      'id,name,sign-in,manner',
      `${otherLearner.person.id},Lars Learner,,learner`,
      ',Lars Learner,lars.learner,learner',
      ',Ada Office,ada.office,tutor',
      ',Tove Tutor,tove,tutor',
    ].join('\n');
    const result = await take(tutor, ownClass.id, { format: 'csv', text });
    expect(result).toMatchObject({ lines: [{ name: 'Lars Learner', result: 'new' }] });
    expect(result.result === 'taken' && result.passedOver).toHaveLength(3);
    expect(await server.store.people.classes.teaches(tutor.person.id, otherLearner.person.id)).toBe(false);
    const byAdmin = await take(admin, ownClass.id, { format: 'csv', text });
    expect(byAdmin).toMatchObject({
      lines: [
        { name: 'Lars Learner', result: 'already' },
        { name: 'Lars Learner', result: 'joined' },
        { name: 'Ada Office', manner: 'tutor', result: 'joined' },
        { name: 'Tove Tutor', manner: 'tutor', result: 'new' },
      ],
    });
  });

  it.each([
    ['no columns', { format: 'csv', text: '' }, 'csv-empty'],
    ['no name', { format: 'csv', text: 'id,manner\n1,learner\n' }, 'roster-missing-column'],
    ['a name that can’t be kept', { format: 'csv', text: `name\n${'x'.repeat(81)}\n` }, 'roster-bad-value'],
    ['another manner', { format: 'csv', text: 'name,manner\nFern,guest\n' }, 'roster-bad-value'],
    [
      'a name for signing in that is none',
      { format: 'csv', text: 'name,sign-in\nFern,"a b"\n' },
      'roster-bad-value',
    ],
    ['an open quotation', { format: 'csv', text: 'name\n"Fern\n' }, 'csv-quote'],
    ['no files', { format: 'oneroster', files: {} }, 'roster-missing-file'],
  ] as const)('with %s is refused whole, with the line', async (_, body, code) => {
    const { tutor, ownClass } = await started();
    const result = await take(tutor, ownClass.id, body);
    expect(result).toMatchObject({ result: 'mistakes' });
    expect(result.result === 'mistakes' && result.problems.map((problem) => problem.code)).toContain(code);
    expect((await server.store.people.classes.get(ownClass.id))!.learners).toBe(1);
  });

  it('of several classes has to say which one', async () => {
    const { admin, ownClass, otherClass } = await started();
    const [one, other] = await Promise.all(
      [ownClass, otherClass].map(async ({ id }) => filesOf((await give(admin, id, 'oneroster')).rawPayload)),
    );
    const joined = Object.fromEntries(
      Object.keys(one!).map((file) => [
        file,
        one![file]! + other![file]!.split('\r\n').slice(1).join('\r\n'),
      ]),
    );
    const body = {
      format: 'oneroster',
      files: { ...joined, 'manifest.csv': one!['manifest.csv']! },
    } as const;
    expect(await take(admin, ownClass.id, body, true)).toMatchObject({ result: 'mistakes' });
    expect(await take(admin, ownClass.id, { ...body, class: otherClass.id }, true)).toMatchObject({
      result: 'taken',
      lines: expect.arrayContaining([{ name: 'Lars Learner', manner: 'learner', result: 'joined' }]),
    });
  });

  it('with more than a class may have is refused, and with far more at once', async () => {
    const { tutor, ownClass } = await started();
    for (const count of [1000, 60_000]) {
      const text = `name\n${Array.from({ length: count }, (_, at) => `L${at}`).join('\n')}\n`;
      const given = { params: { class: ownClass.id }, body: { format: 'csv', text } };
      expect(await tutor.browser.refusedBy(peopleRoutes.takeRoster, given)).toBe('class-full');
    }
    expect((await server.store.people.classes.get(ownClass.id))!.learners).toBe(1);
  });
});

describe('slips', () => {
  it('with the code are a PDF and change nothing', async () => {
    const { tutor, ownClass } = await started();
    const reply = await tutor.browser.ask(requestFor(peopleRoutes.slips, { class: ownClass.id }));
    expect(reply.headers['content-type']).toBe('application/pdf');
    expect(reply.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    expect(await server.store.people.classes.get(ownClass.id)).toEqual(ownClass);
  });

  it('with links are for those who couldn’t come in by themselves, and replace links of before', async () => {
    const { tutor, ownClass, learner } = await started();
    const params = { class: ownClass.id };
    const { people } = await tutor.browser.call(peopleRoutes.addLearners, {
      params,
      body: { names: ['New One'] },
    });
    const reply = await tutor.browser.ask({ ...requestFor(peopleRoutes.linkSlips, params), payload: {} });
    expect(reply.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    const token = /enter\/(.+)$/.exec(people[0]!.link.address)![1];
    expect(await new Browser(server).refusedBy(peopleRoutes.signInWithLink, { body: { token } })).toBe(
      'link-refused',
    );
    // Who has a password keeps it and stays signed in.
    await learner.browser.call(peopleRoutes.sessions);
    expect((await server.store.people.persons.byId(learner.person.id))!.hasPassword).toBe(true);
  });

  it('with links are for nobody of another class', async () => {
    const { tutor, ownClass, otherLearner } = await started();
    const given = { params: { class: ownClass.id }, body: { people: [otherLearner.person.id] } };
    expect(await tutor.browser.refusedBy(peopleRoutes.linkSlips, given)).toBe('no-such-thing');
  });
});

const byName = (one: { name: string }, other: { name: string }): number =>
  new Intl.Collator('en', { numeric: true }).compare(one.name, other.name);
