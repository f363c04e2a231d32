/** PostgreSQL goes away under load, is away at the start, hangs, or is locked: told in words, nothing acknowledged is lost. */
import { connect, createServer, type Socket } from 'node:net';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import { failureOf, openPostgresStore } from '../../src/store/index.ts';
import { type Served, served } from '../server/served.ts';
import { allAnswers, serving } from '../server/serving.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { startPostgres, type TestPostgres } from '../support/postgres.ts';

let postgres: TestPostgres;
beforeAll(async () => {
  postgres = await startPostgres();
});
afterAll(() => postgres?.stop());

/** Keeps sending one answer until it is acknowledged, as the page does. */
async function insist({ address }: Served, id: string): Promise<number> {
  for (let refused = 0; ; refused++) {
    const body = JSON.stringify({ answers: [answerWith({ id, at: MORNING })] });
    const headers = { 'content-type': 'application/json' };
    const reply = await fetch(`${address}/api/answers`, { method: 'POST', headers, body });
    if (reply.status === 200) {
      await reply.json();
      return refused;
    }
    expect(reply.status).toBe(503);
    expect(await reply.json()).toMatchObject({ code: 'store-unavailable' });
  }
}

describe('a database that is started again while it is worked with', () => {
  it('ends no server, and loses nothing that was acknowledged', async () => {
    const address = await postgres.fresh();
    const server = await served([], { DATABASE_URL: address });
    let more = true;
    const acknowledged: string[] = [];
    let refused = 0;
    const writers = Array.from({ length: 16 }, async (_, writer) => {
      for (let at = 0; more; at++) {
        const id = `${writer}-${at}`;
        refused += await insist(server, id);
        acknowledged.push(id);
      }
    });
    for (let times = 0; times < 3; times++) {
      const before = acknowledged.length;
      await insist(server, `before-${times}`);
      await postgres.down();
      await postgres.up();
      await insist(server, `after-${times}`);
      expect(acknowledged.length).toBeGreaterThanOrEqual(before);
    }
    more = false;
    await Promise.all(writers);
    expect(server.child.exitCode).toBeNull();
    expect(refused).toBeGreaterThan(0);
    expect(await server.end('SIGTERM')).toBe(0);
    const store = await openPostgresStore(address);
    const kept = new Set((await store.answersOf('me')).map(({ id }) => id));
    expect(acknowledged.filter((id) => !kept.has(id))).toEqual([]);
    expect(await store.check()).toEqual([]);
    await store.close();
  });
});

describe('a database that is away when the server starts', () => {
  it('is waited for where that is wanted, and refused otherwise', async () => {
    const address = await postgres.fresh();
    await postgres.down();
    await expect(openPostgresStore(address)).rejects.toMatchObject({ code: 'store-unreachable' });
    let opening: Promise<unknown> = Promise.resolve();
    const told = await new Promise<string>((resolve) => {
      opening = openPostgresStore(address, { onAway: ({ code }) => resolve(code) }).then((store) =>
        store.close(),
      );
    });
    expect(told).toBe('store-unreachable');
    await postgres.up();
    await opening;
  });

  it('is not waited for where it refuses', async () => {
    const address = (await postgres.fresh()).replace('only-for-tests', 'wrong');
    const onAway = () => expect.unreachable();
    await expect(openPostgresStore(address, { onAway })).rejects.toMatchObject({
      code: 'store-unreachable',
    });
  });
});

/** A way to the database that can be closed for good to what is said, without being cut. */
async function wayTo(address: string) {
  const there = new URL(address);
  const { port: database, hostname } = there;
  let hangs = false;
  const sockets: Socket[] = [];
  const way = createServer((near) => {
    const far = connect(Number(database), hostname);
    sockets.push(near, far);
    for (const [from, to] of [
      [near, far],
      [far, near],
    ] as const) {
      from.on('error', () => undefined);
      from.on('data', (piece) => {
        if (!hangs) to.write(piece);
      });
      from.on('close', () => to.destroy());
    }
  });
  await new Promise<void>((resolve) => way.listen(0, '127.0.0.1', resolve));
  const port = (way.address() as { port: number }).port;
  there.port = String(port);
  return {
    address: there.href,
    hang: () => {
      hangs = true;
    },
    goOn: () => {
      hangs = false;
      for (const socket of sockets) socket.destroy();
    },
    end: () => {
      for (const socket of sockets) socket.destroy();
      way.close();
    },
  };
}

describe('a database that hangs', () => {
  it('makes the server say that it is not ready, while it is alive; afterwards it is', async () => {
    const way = await wayTo(await postgres.fresh());
    const store = await openPostgresStore(way.address);
    const server = await serving({ store });
    await server.call(apiRoutes.ready);
    way.hang();
    // These are answered at all only because nobody waits for the database.
    await server.refused({ method: 'GET', url: '/api/ready' }, 'store-unavailable');
    await server.call(apiRoutes.health);
    way.goOn();
    // Connections that hung are found to be lost one by one, by whoever is given one.
    const payload = { answers: [answerWith({ id: 'a', at: MORNING })] };
    while ((await server.ask({ method: 'POST', url: '/api/answers', payload })).statusCode !== 200);
    expect((await allAnswers(server)).map(({ id }) => id)).toEqual(['a']);
    await server.call(apiRoutes.ready);
    await server.end();
    await store.close();
    way.end();
  });

  it('is not waited for where somebody else has it locked for long', async () => {
    const address = await postgres.fresh();
    const store = await openPostgresStore(address);
    const other = new pg.Client({ connectionString: address });
    await other.connect();
    await other.query('begin; lock table histories in access exclusive mode');
    const failure = await store.keepAnswers([answerWith({ id: 'a', at: MORNING })]).catch(failureOf);
    expect(failure).toMatchObject({ code: 'store-busy' });
    await other.query('rollback');
    await other.end();
    expect(await store.keepAnswers([answerWith({ id: 'a', at: MORNING })])).toEqual([
      { kept: true, number: 1 },
    ]);
    await store.close();
  });
});
