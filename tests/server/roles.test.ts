/** Every route, as every role and as nobody, and as somebody whose it isn't. */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiRoute } from '../../shared/api.ts';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import { everyRoute } from '../../shared/every-route.ts';
import { type Person, type Role, role as roles } from '../../shared/people.ts';
import { course } from '../homework/course.ts';
import { Browser, type ClassServing, classServing, requestFor, type Somebody } from './class-serving.ts';
import { rolesPage } from './roles-page.ts';
import { SAMPLES, sampleFor } from './samples.ts';
import { NOW, serving } from './serving.ts';

const routes = Object.entries(everyRoute) as readonly (readonly [name: string, route: ApiRoute])[];
const rank = (role: Role): number => roles.options.indexOf(role);
const json = { 'content-type': 'application/json' };

let server: ClassServing;
/** What belongs to the first class, by the names that parameters have. */
let owned: Readonly<Record<string, string>>;
let classmate: Somebody;

beforeAll(async () => {
  server = await classServing({ bank: course.bank, now: () => NOW });
  const { tutor, learner, ownClass } = server;
  classmate = await server.somebody('Cora Classmate', 'learner');
  await server.store.people.joining.asKnown(ownClass.joiningCode.replace('-', ''), classmate.person.id);
  const drafted = await tutor.browser.call(homeworkRoutes.draftHomework, {
    params: { class: ownClass.id },
    body: SAMPLES.draftHomework?.body,
  });
  const params = { set: drafted.set.id };
  await tutor.browser.call(homeworkRoutes.issueHomework, { params });
  const paper = await learner.browser.call(homeworkRoutes.beginPaper, { params });
  owned = {
    class: ownClass.id,
    person: learner.person.id,
    set: drafted.set.id,
    paper: paper.id,
  };
});
afterAll(() => server.end());

/** A session of its own for each request, because some requests end it. */
async function browserOf(person: Person | null): Promise<Browser> {
  const browser = new Browser(server);
  if (person)
    browser.cookie = `polewise_session=${await server.store.people.sessions.begin(person.id, 'a test')}`;
  return browser;
}

const refusalFor = (role: Role) =>
  role === 'nobody' ? { status: 401, code: 'sign-in-first' } : { status: 403, code: 'not-yours' };

describe('every route', () => {
  it('that takes something has a sample of it here, so that the walk gets past its form', () => {
    const wrong = routes.filter(([name, { body, query }]) => {
      const sample = sampleFor(name);
      const asked = Object.fromEntries(new URLSearchParams(sample.query ?? ''));
      return (body && !body.safeParse(sample.body).success) || (query && !query.safeParse(asked).success);
    });
    expect(wrong.map(([name]) => name)).toEqual([]);
  });

  it.each(routes)(
    '%s is for its role and those above, and reads nothing that others send',
    async (name, route) => {
      const { body, query = '' } = sampleFor(name);
      const request = requestFor(route, {}, query);
      for (const role of roles.options) {
        const browser = await browserOf(role === 'nobody' ? null : server[role].person);
        if (rank(role) < rank(route.role)) {
          const { status, code } = refusalFor(role);
          for (const payload of [body ?? '', '{', 'x'.repeat(20_000)]) {
            const sent = await browser.ask({ ...request, headers: json, ...(route.body ? { payload } : {}) });
            expect([role, sent.statusCode, (sent.json() as { code: string }).code]).toEqual([
              role,
              status,
              code,
            ]);
          }
          if (route.method === 'GET')
            expect((await browser.ask({ ...request, method: 'HEAD' })).statusCode).toBe(status);
        } else {
          const reply = await browser.ask({ ...request, ...(body ? { payload: body } : {}) });
          expect([role, reply.statusCode < 500]).toEqual([role, true]);
          expect(reply.body).not.toMatch(/"code":"(?:not-yours|sign-in-first)"/);
          if (route.params) expect([role, reply.statusCode]).toEqual([role, 404]);
        }
      }
    },
  );

  const named = routes.filter(([, { params, role }]) => params && (role === 'learner' || role === 'tutor'));
  it.each(named)('%s shows and changes nothing that belongs to others', async (name, route) => {
    const parameters = Object.keys(route.params!.shape);
    const { otherTutor, otherLearner, otherClass } = server;
    const strangers = route.role === 'tutor' ? [otherTutor] : [otherLearner, otherTutor];
    if (parameters.some((one) => one === 'paper' || one === 'session'))
      strangers.push(classmate, server.tutor, server.admin);
    await server.store.people.sessions.begin(owned['person']!, 'a test');
    const [session] = await server.store.people.sessions.list(owned['person']!);
    owned = { ...owned, session: session!.id };
    const before = await everything();
    const addresses = [owned];
    // Somebody else's learner by way of one's own class.
    if (parameters.length > 1) addresses.push({ ...owned, class: otherClass.id });
    for (const { person } of strangers) {
      if (route.role === 'tutor' && (person === server.tutor.person || person.role !== 'tutor')) continue;
      const browser = await browserOf(person);
      for (const params of addresses) {
        const { body, query = '' } = sampleFor(name);
        const reply = await browser.ask({
          ...requestFor(route, params, query),
          ...(body ? { payload: body } : {}),
        });
        expect([person.name, reply.statusCode, reply.json()]).toMatchObject([
          person.name,
          404,
          { code: 'no-such-thing' },
        ]);
        const unknown = await browser.ask({
          ...requestFor(route, { ...params, [parameters.at(-1)!]: 'unknown' }, query),
          ...(body ? { payload: body } : {}),
        });
        // What belongs to others can't be told from what there never was.
        expect(unknown.body).toBe(reply.body);
      }
    }
    expect(await everything()).toEqual(before);
  });

  it.each(routes.filter(([, { mode }]) => mode === 'class'))(
    '%s isn’t there where nobody signs in, and says what it takes',
    async (name, route) => {
      const solo = await soloServer;
      const { body, query = '' } = sampleFor(name);
      const asked = { ...requestFor(route, owned, query), ...(body ? { payload: body } : {}) };
      const { hint } = await solo.refused(asked, 'no-such-route');
      expect(hint).toContain('serve --class');
    },
  );
  const soloServer = serving();
  afterAll(async () => (await soloServer).end());

  it('stands in docs/roles.md as it is in the contract (npm run docs:roles writes it)', () => {
    const page = readFileSync(new URL('../../docs/roles.md', import.meta.url), 'utf8');
    expect(page).toBe(rolesPage());
  });
});

/** What there is in the first class, to be held against what there is afterwards. */
async function everything(): Promise<unknown> {
  const { people, homework } = server.store;
  return {
    detail: await people.classes.get(owned['class']!),
    sets: await homework.setsOf([owned['class']!]),
    papers: await homework.papersIn([owned['set']!]),
    saved: await homework.answersOf(owned['paper']!),
    hints: await homework.hintsOf(owned['paper']!),
    sessions: (await people.sessions.list(owned['person']!)).length,
  };
}
