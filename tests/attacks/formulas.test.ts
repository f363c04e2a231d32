/** Names that a spreadsheet would run, in every table that is given to people. */
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { newClassTitle, newIntake, newName } from '../../shared/new-names.ts';
import type { ClassDetail } from '../../shared/people.ts';
import { readCsv } from '../../src/homework/index.ts';
import { oneRosterFiles } from '../../src/server/people/roster-out.ts';
import { english } from '../../src/words/en/core.ts';
import { sampleFor } from '../server/samples.ts';
import { type AtWork, atWork, routes } from './every-route.ts';

// OWASP, CSV Injection: what a formula begins with; the others from memory.
const NAMES = [
  '=1+1',
  '+1',
  '-1',
  '@SUM(1)',
  '＝1+1',
  '"=1',
  'x;=1+1;',
  'x;"=1',
  'a,=1+1',
  "=cmd|' /C calc'!A0",
];

let at: AtWork;
beforeAll(async () => {
  at = await atWork();
  const { store } = at.server;
  // As they may have been kept before such names were refused.
  const added = await store.people.joining.byNames(at.owned['class']!, NAMES);
  expect(added).toHaveLength(NAMES.length);
  const detail = await store.people.classes.get(at.owned['class']!);
  expect(detail!.members.map(({ name }) => name)).toEqual(expect.arrayContaining(NAMES));
});
afterAll(() => at.server.end());

/** The cells of a table as a spreadsheet takes them that divides lines at this sign. */
function cellsAt(text: string, separator: ',' | ';'): readonly string[] {
  if (separator === ';') return text.split(/\r\n|;/);
  const read = readCsv(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { columns, rows } = read.value;
  return [...columns, ...rows.flatMap(({ value }) => columns.map(value))];
}

describe('a table for people', () => {
  const tables = routes.filter(
    ([, { reply }]) => 'kind' in reply && reply.types.some((type) => type.startsWith('text/csv')),
  );

  it('is given by the routes that say so', () => {
    expect(tables.map(([name]) => name).sort()).toEqual(['giveRoster', 'marksCsv']);
  });

  it.each(tables)('of %s has everybody and no formula, wherever its lines are divided', async (...named) => {
    const reply = await (await at.browserFor(named[1])).ask(at.request(named));
    expect([reply.statusCode, reply.headers['content-type']]).toEqual([
      200,
      expect.stringMatching(/^text\/csv/),
    ]);
    expect(reply.body.split('\r\n').length).toBeGreaterThan(NAMES.length);
    for (const separator of [',', ';'] as const)
      for (const cell of cellsAt(reply.body, separator)) expect(cell).not.toMatch(/^\s*"*[=+\-@＝＋－＠]/);
  });
});

describe('a name that a spreadsheet would run', () => {
  const FORMULAS = ['=1+1', '+1', '-1', '@SUM(1)', '＝1+1', '\t=1', ' =1', "'=1", '"=1', 'x;=1+1;', 'x;"=1'];
  /** Fields with which names come in. */
  const FIELDS = ['name', 'names', 'title', 'intake'];
  const ways = routes.flatMap((named) => {
    const body = sampleFor(named[0]).body as Record<string, unknown> | undefined;
    const fields = Object.keys(body ?? {}).filter((field) => FIELDS.includes(field));
    return fields.map((field) => [named[0], field, named] as const);
  });

  // Spellings that are met on lists, from memory.
  it.each([
    'Ó Briain',
    'ʻAkahi',
    'd’Arcy',
    "'t Hooft",
    'J.-P. Roe',
    'Jean - Pierre Roe',
    'Roe; Ann',
    'محمد',
    '王小明',
  ])('isn’t %s', (name) => {
    expect(newName.safeParse(name).success).toBe(true);
  });

  it('could come in by so many ways', () => {
    expect(ways.map(([name, field]) => `${name} ${field}`).sort()).toEqual([
      'addLearners names',
      'changeClass title',
      'changeHomework title',
      'draftHomework title',
      'firstRun name',
      'join name',
      'newClass title',
      'newPerson name',
      'renamePerson name',
    ]);
  });

  it.each(ways)('is refused by %s as its %s, and it is said what would be right', async (_, field, named) => {
    const browser = await at.browserFor(named[1]);
    const request = at.request(named);
    for (const formula of FORMULAS) {
      const payload = { ...request.payload, [field]: field === 'names' ? ['Ann', formula] : formula };
      const reply = await browser.ask({ ...request, payload });
      expect([formula, reply.statusCode, reply.json()]).toEqual([
        formula,
        400,
        expect.objectContaining({
          code: 'bad-value',
          message: expect.stringContaining('begins with a letter or digit'),
        }),
      ]);
    }
  });

  it('is refused in a roster, with its line', async () => {
    const named = routes.find(([name]) => name === 'takeRoster')!;
    const browser = await at.browserFor(named[1]);
    const request = at.request(named);
    const take = async (payload: object) => (await browser.ask({ ...request, payload })).json();
    const hint = expect.stringContaining('begins with a letter or digit');
    expect(await take({ format: 'csv', text: "name\nAnn\n'=1+1\nBo -2\n" })).toMatchObject({
      problems: [
        { line: 3, hint },
        { line: 4, hint },
      ],
    });
    const files = {
      'users.csv':
        'sourcedId,enabledUser,role,username,givenName,familyName\nu1,true,student,u1,Ann,Orchard\nu2,true,student,u2,Bo,=1+1\n',
      'classes.csv': 'sourcedId,title\nc,Packers\n',
      'enrollments.csv': 'sourcedId,classSourcedId,userSourcedId,role\n1,c,u1,student\n2,c,u2,student\n',
    };
    expect(await take({ format: 'oneroster', files })).toMatchObject({
      problems: [{ file: 'users.csv', line: 3, hint }],
    });
  });

  it('never begins a text in the tables for programs, whatever is let in', () => {
    const sign = fc.constantFrom('=', '+', '-', '@', '＝', ' ', '\t', '"', "'", 'a', '1', 'Ж', ',');
    const letIn = (schema: typeof newName) =>
      fc
        .string({ unit: sign, minLength: 1, maxLength: 8 })
        .map((text) => schema.safeParse(text).data)
        .filter((text) => text !== undefined);
    const class_ = { id: 'c', createdAt: 0, endedAt: null, learners: 1 };
    const member = { id: 'm', role: 'learner', signIn: null, hasPassword: false, manner: 'learner' } as const;
    const parts = fc.tuple(letIn(newName), letIn(newClassTitle), letIn(newIntake));
    const none = fc.property(parts, ([name, title, intake]) => {
      const members = [{ ...member, name, createdAt: 0, joinedAt: 0 }];
      const files = oneRosterFiles({ ...class_, title, intake, members } as unknown as ClassDetail, english);
      // One who has no family name has a hyphen there.
      const cells = Object.values(files).flatMap((text) => cellsAt(text, ','));
      const texts = cells.filter((cell) => cell !== '-');
      for (const text of texts) expect(text).not.toMatch(/^\s*[=+\-@＝＋－＠]/);
    });
    expect(() => fc.assert(none, { numRuns: 1000 })).not.toThrow();
  });

  it('that is kept from before is given to programs as it is', async () => {
    const detail = (await at.server.store.people.classes.get(at.owned['class']!))!;
    expect(cellsAt(oneRosterFiles(detail, english)['users.csv']!, ',')).toContain('=1+1');
  });
});
