/** The disk fills up, the database goes away: refused in words, nothing acknowledged is lost, and afterwards it goes on. */
import { sql } from 'kysely';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import { openPostgresStore, openStore, type Store } from '../../src/store/index.ts';
import { KyselyStore } from '../../src/store/kysely-store.ts';
import { answersTo, classServing } from '../server/homework/class-serving.ts';
import { allAnswers, type Serving, serving } from '../server/serving.ts';
import { answerWith, DAY, MORNING } from '../support/answers.ts';
import { startPostgres } from '../support/postgres.ts';

const answers = (count: number): AnswerRecord[] =>
  Array.from({ length: count }, (_, at) => answerWith({ id: `a${at}`, at: MORNING + at * 1000 }));

const posting = (sent: readonly AnswerRecord[]) =>
  ({ method: 'POST', url: '/api/answers', payload: { answers: sent } }) as const;

let server: Serving | undefined;
afterEach(async () => {
  await server?.end();
  server = undefined;
});

/** Holds the file to so many more pages: past them SQLite says what it says of a full disk. */
async function withRoomFor(store: Store, more: number | 'plenty'): Promise<void> {
  if (!(store instanceof KyselyStore)) throw new Error('not the store that is meant');
  const db = store['db'];
  const { rows } = await sql<{ page_count: number }>`pragma page_count`.execute(db);
  const pages = more === 'plenty' ? 1_000_000 : rows[0]!.page_count + more;
  await sql`pragma max_page_count = ${sql.raw(String(pages))}`.execute(db);
}

describe('a disk that is full', () => {
  it('refuses clearly, keeps all that was acknowledged, and takes the rest once there is room', async () => {
    server = await serving();
    const sent = answers(400);
    const acknowledged: string[] = [];
    await withRoomFor(server.store, 60);
    let refusal: { message: string; hint: string } | undefined;
    let at = 0;
    for (; at < sent.length && !refusal; at += 10) {
      const batch = sent.slice(at, at + 10);
      const reply = await server.ask(posting(batch));
      if (reply.statusCode === 200) acknowledged.push(...batch.map(({ id }) => id));
      else refusal = await server.refused(posting(batch), 'store-unavailable');
    }
    expect(refusal?.message).toBe('There is no room left on the disk.');
    expect(refusal?.hint).toMatch(/Make room/);
    expect(acknowledged.length).toBeGreaterThan(10);
    expect(acknowledged.length).toBeLessThan(sent.length);
    // What is there can be read meanwhile, and the server lives.
    expect((await allAnswers(server)).map(({ id }) => id)).toEqual(acknowledged);
    expect(await server.call(apiRoutes.health)).toMatchObject({ status: 'alive' });

    await withRoomFor(server.store, 'plenty');
    await server.send(sent.slice(0, 200));
    await server.send(sent.slice(200));
    expect((await allAnswers(server)).map(({ id }) => id)).toEqual(sent.map(({ id }) => id));
    expect(await server.store.check()).toEqual([]);
  });
});

describe('a disk that is full while a paper is worked on', () => {
  it('refuses what it can not keep, loses nothing that was saved, and takes the rest once there is room', async () => {
    const serving = await classServing(1);
    const [learner] = serving.learners;
    const { set } = await serving.issued({ attempts: 1 });
    const begun = await learner!.call(homeworkRoutes.beginPaper, { params: { set: set.id } });
    const params = { paper: begun.id };
    const right = await answersTo(serving, begun, 'right');
    const blank = await answersTo(serving, begun, 'blank');
    // To and fro, until there is no room; the right ones last.
    const saves = Array.from({ length: 400 }, (_, at) => ({
      ...(at < 396 ? blank : right)[at % 4]!,
      id: `save-${at}`,
    }));
    const saving = (at: number) => ({ params, body: { answers: saves.slice(at, at + 4) } });
    await withRoomFor(serving.store, 4);
    let kept = 0;
    for (; kept < saves.length; kept += 4)
      if ((await learner!.ask(homeworkRoutes.saveAnswers, saving(kept))).statusCode !== 200) break;
    expect(kept).toBeGreaterThan(0);
    expect(kept).toBeLessThan(396);
    expect(await learner!.refused(homeworkRoutes.saveAnswers, saving(kept), 'store-unavailable')).toMatch(
      /no room left/,
    );
    const ids = async () => (await serving.store.homework.answersOf(params.paper)).map(({ id }) => id);
    expect(await ids()).toEqual(saves.slice(0, kept).map(({ id }) => id));

    await withRoomFor(serving.store, 'plenty');
    for (let at = 0; at < saves.length; at += 4) await learner!.call(homeworkRoutes.saveAnswers, saving(at));
    expect(await ids()).toEqual(saves.map(({ id }) => id));
    await learner!.call(homeworkRoutes.submitPaper, { params, body: {} });
    serving.clock.now = set.closesAt;
    const { mark } = await learner!.call(homeworkRoutes.reviewPaper, { params });
    expect(mark.items.map(({ mark: { share } }) => share)).toEqual([1, 1, 1, 1]);
    expect(await serving.store.check()).toEqual([]);
    await serving.end();
  });
});

describe('a database that goes away', async () => {
  const postgres = await startPostgres();
  afterAll(() => postgres.stop());

  it('in the middle of answers is told, and when it is back the server goes on by itself', async () => {
    const store = await openPostgresStore(await postgres.fresh());
    server = await serving({ store });
    const sent = answers(60);
    await server.send(sent.slice(0, 20));
    await postgres.down();
    const { message, hint } = await server.refused(posting(sent.slice(20, 40)), 'store-unavailable');
    expect(message).toMatch(/cannot be reached/);
    expect(hint).toMatch(/DATABASE_URL/);
    await server.refused({ url: '/api/ready' }, 'store-unavailable');
    await postgres.up();
    await expect.poll(async () => (await server!.ask({ url: '/api/ready' })).statusCode).toBe(200);
    const results = await server.send(sent);
    expect(results.map(({ result }) => result)).toEqual([
      ...Array(20).fill('already'),
      ...Array(40).fill('kept'),
    ]);
    expect(await store.check()).toEqual([]);
    await store.close();
  });
});

describe('a clock that is set back', () => {
  it('leaves the order of arrival as it is, and the memory comes right with the clock', async () => {
    const right = MORNING + 10_000_000;
    let now = right;
    const store = await openStore({ kind: 'file', file: ':memory:' }, { now: () => now });
    server = await serving({ store });
    const sent = answers(11);
    await server.send(sent.slice(0, 5));
    now = MORNING - 365 * DAY;
    await server.send(sent.slice(5, 10));
    expect((await allAnswers(server)).map(({ id }) => id)).toEqual(sent.slice(0, 10).map(({ id }) => id));
    expect((await server.call(apiRoutes.recalls)).recalls['changeover']).toMatchObject({ reviews: 10 });
    // Sent once more under the wrong clock, they are still the same answers.
    expect((await server.send(sent.slice(0, 10))).every(({ result }) => result === 'already')).toBe(true);
    now = right;
    await server.send(sent.slice(10));

    const other = await openStore({ kind: 'file', file: ':memory:' }, { now: () => right });
    await other.keepAnswers(sent);
    expect((await server.call(apiRoutes.recalls)).recalls).toEqual(
      Object.fromEntries(await other.recallsOf('me')),
    );
    await other.close();
    await store.close();
  });
});
