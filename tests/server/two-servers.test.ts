/** Two servers over one PostgreSQL, as a larger site has them. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import { openPostgresStore, type Store } from '../../src/store/index.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { startPostgres, type TestPostgres } from '../support/postgres.ts';
import { served } from './served.ts';
import { allAnswers, type Serving, serving } from './serving.ts';

let postgres: TestPostgres;
const servers: Serving[] = [];
const stores: Store[] = [];
beforeAll(async () => {
  postgres = await startPostgres();
  const address = await postgres.fresh();
  for (let at = 0; at < 2; at++) {
    const store = await openPostgresStore(address);
    stores.push(store);
    servers.push(await serving({ store }));
  }
});
afterAll(async () => {
  for (const server of servers) await server.end();
  for (const store of stores) await store.close();
  await postgres?.stop();
});

describe('two servers over one database', () => {
  it('count each answer once, whichever of them it is sent to, and number without gaps', async () => {
    const answers = Array.from({ length: 60 }, (_, at) =>
      answerWith({ id: `a${at}`, at: MORNING + at * 1000 }),
    );
    const batches = Array.from({ length: 40 }, (_, at) => answers.slice(at, at + 21));
    const results = await Promise.all(batches.map((batch, at) => servers[at % 2]!.send(batch)));
    expect(results.flat().filter(({ result }) => result === 'kept')).toHaveLength(60);
    const [one, other] = await Promise.all(servers.map((server) => allAnswers(server)));
    expect(one).toEqual(other);
    expect(one!.map(({ id }) => id).sort()).toEqual(answers.map(({ id }) => id).sort());
    const recalls = await Promise.all(servers.map((server) => server.call(apiRoutes.recalls)));
    expect(recalls[0]).toEqual(recalls[1]);
    expect(recalls[0]!.recalls['changeover']).toMatchObject({ reviews: 60 });
    expect(await stores[0]!.check()).toEqual([]);
  });

  it('see what the other one was told', async () => {
    const wanted = { changedAt: MORNING, minutesADay: 25 };
    await servers[0]!.call(apiRoutes.putSettings, { body: wanted });
    expect(await servers[1]!.call(apiRoutes.settings)).toMatchObject(wanted);
    await servers[1]!.call(apiRoutes.eraseLearner, { query: '?confirm=me' });
    expect(await allAnswers(servers[0]!)).toEqual([]);
  });
});

describe('a server with DATABASE_URL', () => {
  it('serves from the database, and stops', async () => {
    const running = await served([], { DATABASE_URL: await postgres.fresh() });
    expect((await fetch(`${running.address}/api/ready`)).status).toBe(200);
    expect(running.printed()).toContain('in the database');
    expect(await running.end('SIGTERM')).toBe(0);
  });

  it('says that the database is gone, and stays alive', async () => {
    const own = await startPostgres();
    const address = await own.fresh();
    const store = await openPostgresStore(address);
    const server = await serving({ store });
    await server.send([answerWith({ id: 'before', at: MORNING })]);
    await own.stop();
    const payload = { answers: [answerWith({ id: 'meanwhile', at: MORNING })] };
    await server.refused({ method: 'POST', url: '/api/answers', payload }, 'store-unavailable');
    await server.refused({ url: '/api/ready' }, 'store-unavailable');
    await server.refused({ url: '/api/recalls' }, 'store-unavailable');
    expect(await server.call(apiRoutes.health)).toMatchObject({ status: 'alive' });
    await server.end();
    await store.close();
  });
});
