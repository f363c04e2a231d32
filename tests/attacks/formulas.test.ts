/** Names that a spreadsheet would run, in every table that is given to people. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { peopleRoutes } from '../../shared/api-people.ts';
import { readCsv } from '../../src/homework/index.ts';
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
  const { tutor, store } = at.server;
  await tutor.browser.call(peopleRoutes.addLearners, {
    params: { class: at.owned['class']! },
    body: { names: NAMES },
  });
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
