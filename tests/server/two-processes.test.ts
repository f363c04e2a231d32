/** Two servers, each a process of its own, over one PostgreSQL: the same classes, whichever of them is asked. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { z } from 'zod';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import { me, peopleRoutes } from '../../shared/api-people.ts';
import type { ApiRoute } from '../../shared/api-route.ts';
import type { Answer } from '../../shared/question.ts';
import { blankAnswer } from '../../src/questions/index.ts';
import { openPostgresStore, type Store } from '../../src/store/index.ts';
import { DAY } from '../support/answers.ts';
import { startPostgres, type TestPostgres } from '../support/postgres.ts';
import { type Served, served } from './served.ts';

const PASSWORD = 'a long enough one';
const LEARNERS = 8;

let postgres: TestPostgres;
let store: Store;
const servers: Served[] = [];
beforeAll(async () => {
  postgres = await startPostgres();
  const address = await postgres.fresh();
  const environment = { DATABASE_URL: address };
  servers.push(...(await Promise.all([served(['--class'], environment), served(['--class'], environment)])));
  store = await openPostgresStore(address);
});
afterAll(async () => {
  for (const server of servers)
    if (server.child.exitCode === null && server.child.signalCode === null) await server.end('SIGTERM');
  await store?.close();
  await postgres?.stop();
});

/** A browser with its cookie. */
class Browser {
  cookie = '';

  /** Asks one of the two servers; the status and what it replied. */
  async raw(
    server: number,
    route: ApiRoute,
    { params = {}, body }: { params?: Readonly<Record<string, string>>; body?: unknown } = {},
  ): Promise<{ readonly status: number; readonly reply: unknown }> {
    const path = route.path.replace(/:(\w+)/g, (_, name: string) => params[name]!);
    const response = await fetch(`${servers[server]!.address}${path}`, {
      method: route.method,
      headers: { cookie: this.cookie, ...(body ? { 'content-type': 'application/json' } : {}) },
      ...(body ? { body: JSON.stringify(body) } : {}),
    });
    const given = response.headers.getSetCookie()[0]?.split(';')[0];
    if (given) this.cookie = given;
    return { status: response.status, reply: await response.json() };
  }

  async ask<R extends ApiRoute & { readonly reply: z.ZodType }>(
    server: number,
    route: R,
    given: { params?: Readonly<Record<string, string>>; body?: unknown } = {},
  ): Promise<z.output<R['reply']>> {
    const { status, reply } = await this.raw(server, route, given);
    if (status !== 200) throw new Error(`${route.path}: ${status} ${JSON.stringify(reply)}`);
    return route.reply.parse(reply) as z.output<R['reply']>;
  }
}

const tutor = new Browser();
const learners: { readonly browser: Browser; readonly id: string; readonly signIn: string }[] = [];
let set = '';

describe('two server processes over one database', () => {
  it('print the same key for the first run, and one administrator comes of it', async () => {
    const keys = servers.map((server) => /this key: (\S+)/.exec(server.printed())?.[1]);
    expect(keys[0]).toMatch(/^(\w{4}-){4}\w{4}$/);
    expect(keys[1]).toBe(keys[0]);
    const body = { key: keys[0], name: 'Office', signIn: 'office', password: PASSWORD };
    const tries = await Promise.all([
      tutor.raw(0, peopleRoutes.firstRun, { body }),
      new Browser().raw(1, peopleRoutes.firstRun, { body: { ...body, signIn: 'other' } }),
    ]);
    expect(tries.map(({ status }) => status).sort()).toEqual([200, 403]);
    if (tries[0]!.status !== 200)
      await tutor.ask(1, peopleRoutes.signIn, { body: { signIn: 'other', password: PASSWORD } });
    expect((await tutor.ask(1, peopleRoutes.me)).person?.role).toBe('admin');
  });

  it('let learners in by the code of a class that the other one made', async () => {
    const made = await tutor.ask(0, peopleRoutes.newClass, { body: { title: 'Ice works fitters' } });
    for (let number = 0; number < LEARNERS; number++) {
      const browser = new Browser();
      const signIn = `learner-${number}`;
      const body = { code: made.joiningCode, name: `Learner ${number}`, signIn, password: PASSWORD };
      const { person } = me.parse(await browser.ask(number % 2, peopleRoutes.join, { body }));
      learners.push({ browser, id: person!.id, signIn });
    }
    const seen = await tutor.ask(1, peopleRoutes.class, { params: { class: made.id } });
    expect(seen.members.filter(({ manner }) => manner === 'learner')).toHaveLength(LEARNERS);
  });

  it('make the papers of one set at the same time, and no two have a circuit in the same place', async () => {
    const { classes } = await tutor.ask(0, peopleRoutes.classes);
    const drafted = await tutor.ask(0, homeworkRoutes.draftHomework, {
      params: { class: classes[0]!.id },
      body: {
        title: 'Brine pumps',
        skills: ['make-contact', 'changeover-legs'],
        items: 4,
        level: 'small',
        opensAt: Date.now() - 60_000,
        closesAt: Date.now() + DAY,
      },
    });
    set = drafted.set.id;
    await tutor.ask(1, homeworkRoutes.issueHomework, { params: { set } });
    const prepare = async (server: number): Promise<void> => {
      for (;;) {
        const { made, of } = await tutor.ask(server, homeworkRoutes.prepareHomework, { params: { set } });
        if (made >= of) return;
      }
    };
    // A learner who begins meanwhile gets a paper too, and not a second one.
    await Promise.all([
      prepare(0),
      prepare(1),
      learners[0]!.browser.ask(0, homeworkRoutes.beginPaper, { params: { set } }),
      learners[0]!.browser.ask(1, homeworkRoutes.beginPaper, { params: { set } }),
    ]);
    const heads = await store.homework.papersIn([set]);
    expect(heads.map(({ learner }) => learner).sort()).toEqual(learners.map(({ id }) => id).sort());
    const papers = await Promise.all(heads.map(({ id }) => store.homework.paper(id)));
    for (let place = 0; place < 4; place++)
      expect(new Set(papers.map((paper) => paper!.paper.items[place]!.circuit)).size).toBe(LEARNERS);
  });

  it('take the answers of one paper in turns, and stop taking them when either was told that it is handed in', async () => {
    const { browser } = learners[0]!;
    const params = { set };
    const begun = await browser.ask(1, homeworkRoutes.beginPaper, { params });
    const paper = { paper: begun.id };
    const kept = (await store.homework.paper(begun.id))!.paper;
    const answer: Answer = blankAnswer(kept.items[0]!.question);
    const ids = Array.from({ length: 6 }, (_, at) => `save-${at}`);
    for (const [at, id] of ids.entries())
      await browser.ask(at % 2, homeworkRoutes.saveAnswers, {
        params: paper,
        body: { answers: [{ id, item: 0, answer }] },
      });
    const views = await Promise.all(
      [0, 1].map((server) => browser.ask(server, homeworkRoutes.paper, { params: paper })),
    );
    // The view has what counts; all of it is kept, in its order.
    for (const { saved } of views) expect(saved.map(({ id }) => id)).toEqual(ids.slice(-1));
    expect((await store.homework.answersOf(begun.id)).map(({ id }) => id)).toEqual(ids);
    const handed = await Promise.all(
      [0, 1].map((server) => browser.ask(server, homeworkRoutes.submitPaper, { params: paper, body: {} })),
    );
    expect(handed[0]).toEqual(handed[1]);
    const late = await browser.raw(1, homeworkRoutes.saveAnswers, {
      params: paper,
      body: { answers: [{ id: 'late', item: 0, answer }] },
    });
    expect(late).toMatchObject({ status: 409, reply: { code: 'submitted' } });
    const reports = await Promise.all(
      [0, 1].map((server) => tutor.ask(server, homeworkRoutes.homeworkReport, { params })),
    );
    expect(reports[0]).toEqual(reports[1]);
  });

  it('count tries together', async () => {
    const body = { signIn: learners[1]!.signIn, password: 'not the right one' };
    const trying = async (at: number): Promise<number> =>
      (await new Browser().raw(at % 2, peopleRoutes.signIn, { body })).status;
    const statuses = await Promise.all(Array.from({ length: 30 }, (_, at) => trying(at)));
    const wrong = statuses.filter((status) => status === 403).length;
    // Five, and one more after each wait: of one second, two, four.
    expect(wrong).toBeGreaterThanOrEqual(5);
    expect(wrong).toBeLessThanOrEqual(8);
    expect(statuses.filter((status) => status === 429)).toHaveLength(30 - wrong);
  });

  it('end a session for both at once', async () => {
    const { browser, id } = learners[2]!;
    for (const server of [0, 1]) expect((await browser.ask(server, peopleRoutes.me)).person?.id).toBe(id);
    await tutor.ask(0, peopleRoutes.endSessionsOf, { params: { person: id } });
    for (const server of [0, 1]) expect((await browser.raw(server, peopleRoutes.sessions)).status).toBe(401);
  });

  it('go on with one of them gone', async () => {
    await servers[0]!.end('SIGKILL');
    const { browser } = learners[3]!;
    const begun = await browser.ask(1, homeworkRoutes.beginPaper, { params: { set } });
    expect(begun.open).toBe(true);
    expect(await store.check()).toEqual([]);
  });
});
