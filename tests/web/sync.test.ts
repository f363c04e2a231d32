import 'fake-indexeddb/auto';
import './support/words.ts';
import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import type { Settings } from '../../shared/settings.ts';
import { type Ahead, Local } from '../../src/web/local/database.ts';
import { eraseAtServer, eraseDevice } from '../../src/web/local/erase.ts';
import { firstMissing, inLine } from '../../src/web/local/exchange.ts';
import { type Coming, type Fetch, synchronise } from '../../src/web/local/sync.ts';
import { allAnswers, type Serving, serving } from '../server/serving.ts';
import { answerWith, MORNING } from '../support/answers.ts';

const given = (id: string, minute: number): AnswerRecord =>
  answerWith({ id, learner: 'me', at: MORNING + minute * 60_000 });

const open: { server?: Serving; devices: Local[] } = { devices: [] };
let names = 0;

async function device(): Promise<Local> {
  const made = await Local.open(`device-${++names}`);
  open.devices.push(made);
  return made;
}

/** A network to the real server, on which `broken` says of each request whether it is lost, and on which way. */
function network(
  server: Serving,
  broken: (request: number) => 'before' | 'after' | undefined = () => undefined,
): Fetch {
  let number = 0;
  return async (path, { method = 'GET', body } = {}) => {
    const how = broken(number++);
    if (how === 'before') throw new TypeError('no network');
    const reply = await server.ask({
      method: method as 'GET',
      url: path,
      ...(typeof body === 'string' ? { payload: body, headers: { 'content-type': 'application/json' } } : {}),
    });
    if (how === 'after') throw new TypeError('the reply was lost');
    return new Response(reply.body, { status: reply.statusCode });
  };
}

function exchange(local: Local, fetch: Fetch) {
  const seen: {
    answers: string[];
    settings: Settings[];
    ahead: (Ahead | null)[];
    coming: Coming[];
    anew: string[][];
  } = { answers: [], settings: [], ahead: [], coming: [], anew: [] };
  return synchronise(local, fetch, {
    ahead: (states) => seen.ahead.push(states),
    lines: (fresh) => seen.answers.push(...fresh.map(({ id }) => id)),
    anew: (all) => seen.anew.push(all.map(({ id }) => id)),
    coming: (how) => seen.coming.push(how),
    settings: (newer) => seen.settings.push(newer),
  }).then((result) => ({ result, ...seen }));
}

const kept = async (server: Serving): Promise<string[]> => (await allAnswers(server)).map(({ id }) => id);

const ids = async (local: Local): Promise<string[]> => (await local.lines()).map(({ id }) => id);

async function start(): Promise<Serving> {
  open.server = await serving();
  return open.server;
}

afterEach(async () => {
  for (const local of open.devices.splice(0)) local.close();
  await open.server?.end();
  delete open.server;
});

describe('answers kept on a device', () => {
  it('arrive in the order in which they were given, each once', async () => {
    const server = await start();
    const local = await device();
    const all = Array.from({ length: 120 }, (_, minute) => given(`answer-${minute}`, minute));
    for (const answer of all) await local.keep(answer);
    expect((await exchange(local, network(server))).result).toBe('done');
    expect(await kept(server)).toEqual(all.map(({ id }) => id));
    expect(await local.waiting()).toBe(0);
  });

  it('survive a network that loses requests and replies at any point: once each, in order', async () => {
    const server = await start();
    let run = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.constantFrom('before' as const, 'after' as const, undefined), { maxLength: 12 }),
        async (losses) => {
          run += 1;
          const local = await device();
          const all = Array.from({ length: 7 }, (_, minute) =>
            given(`run-${run}-${minute}`, run * 100 + minute),
          );
          for (const answer of all) await local.keep(answer);
          const line = network(server, (request) => losses[request]);
          for (let tries = 0; (await exchange(local, line)).result !== 'done'; tries++)
            if (tries > losses.length) throw new Error('it never gets through');
          const arrived = (await server.store.entriesAfter('me', 0, 100_000)).entries.map(({ id }) => id);
          expect(arrived.filter((id) => id.startsWith(`run-${run}-`))).toEqual(all.map(({ id }) => id));
          expect(await local.waiting()).toBe(0);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('of two devices that were offline together meet on both', async () => {
    const server = await start();
    const [phone, desk] = [await device(), await device()];
    await phone.keep(given('phone-1', 1));
    await desk.keep(given('desk-1', 2));
    await phone.keep(given('phone-2', 3));
    await exchange(phone, network(server));
    const { answers } = await exchange(desk, network(server));
    await exchange(phone, network(server));
    expect(answers).toContain('phone-2');
    expect(await ids(phone)).toEqual(['phone-1', 'desk-1', 'phone-2']);
    expect(await ids(desk)).toEqual(['phone-1', 'desk-1', 'phone-2']);
    expect((await kept(server)).toSorted()).toEqual(['desk-1', 'phone-1', 'phone-2']);
  });

  it('that the server refuses for good stay here and hold up no other', async () => {
    const server = await start();
    const local = await device();
    const bad = { ...given('bad', 1), learner: 'somebody-else' };
    await local.keep(bad);
    await local.keep(given('good', 2));
    expect((await exchange(local, network(server))).result).toBe('done');
    expect(await kept(server)).toEqual(['good']);
    expect(await local.waiting()).toBe(0);
    expect(await ids(local)).toContain('bad');
  });

  it('given while a long history is fetched do not wait for its end, and what was set elsewhere comes before it', async () => {
    const server = await start();
    await server.send(Array.from({ length: 150 }, (_, minute) => given(`elsewhere-${minute}`, minute)));
    const local = await device();
    const line = network(server);
    const asked: string[] = [];
    const result = await exchange(local, async (path, init) => {
      asked.push(`${init?.method ?? 'GET'} ${path.split('?')[0]}`);
      const reply = await line(path, init);
      // Answered while the first page of the history is under way.
      if (path.includes('after=0')) await local.keep(given('meanwhile', 500));
      return reply;
    });
    expect(result.result).toBe('done');
    expect(asked.slice(0, 2).toSorted()).toEqual(['GET /api/recalls', 'GET /api/settings']);
    expect(asked.slice(2)).toEqual([
      'GET /api/lines',
      'GET /api/answers',
      'POST /api/answers',
      'GET /api/answers',
    ]);
    expect(await local.waiting()).toBe(0);
    // Known in short before the first whole answer came, and then whole.
    expect(result.answers).toHaveLength(150);
    expect(await firstMissing(local, 0)).toBeUndefined();
    expect(result.coming.map(({ what, here, all }) => [what, here, all])).toEqual([['answers', 100, 150]]);
  });

  it('come as how the learner stands first, on a device that has nothing: in one reply, until all of them are here', async () => {
    const server = await start();
    await server.send(Array.from({ length: 120 }, (_, minute) => given(`elsewhere-${minute}`, minute)));
    const { recalls } = await server.call(apiRoutes.recalls);
    const local = await device();
    const line = network(server);
    // The network is lost after that one reply.
    const short: Fetch = (path, init) =>
      path.startsWith('/api/lines') ? Promise.reject(new TypeError('no network')) : line(path, init);
    const first = await exchange(local, short);
    expect(first.result).toBe('offline');
    expect(first.ahead.map((states) => states?.recalls)).toEqual([recalls]);
    expect(await local.value('ahead')).toMatchObject({ last: 120, recalls });
    expect(await local.lines()).toEqual([]);
    // It isn't asked for again, and goes when the answers themselves are here.
    const asked: string[] = [];
    const then = await exchange(local, (path, init) => {
      asked.push(path);
      return line(path, init);
    });
    expect(then.result).toBe('done');
    expect(asked).not.toContain('/api/recalls');
    expect(then.ahead).toEqual([null]);
    expect(await local.value('ahead')).toBeUndefined();
    expect(await local.lines()).toHaveLength(120);
  });

  it('are fetched anew in short where their marks were corrected, and hold from then on', async () => {
    const server = await start();
    const local = await device();
    await local.keep(given('answer-1', 1));
    await local.keep(given('answer-2', 2));
    await exchange(local, network(server));
    const wrong = answerWith({ id: 'x', at: 0, share: 0 }).mark;
    await server.store.correctMarks((record) => (record.id === 'answer-1' ? wrong : record.mark));
    const { answers, result } = await exchange(local, network(server));
    expect(result).toBe('done');
    expect(answers).toContain('answer-1');
    expect((await local.lines()).map(({ correct, number }) => [correct, number])).toEqual([
      [false, 1],
      [true, 2],
    ]);
    expect((await exchange(local, network(server))).answers).toEqual([]);
  });

  it('are sent again, all of them, when a backup was put back or everything was erased there', async () => {
    const before = await start();
    const local = await device();
    for (const minute of [1, 2, 3]) await local.keep(given(`answer-${minute}`, minute));
    await exchange(local, network(before));
    await before.end();
    const after = await start();
    // Another device has begun the new history already.
    await after.send([given('other', 9)]);
    expect((await exchange(local, network(after))).result).toBe('done');
    expect((await kept(after)).toSorted()).toEqual(['answer-1', 'answer-2', 'answer-3', 'other']);
    expect((await ids(local)).toSorted()).toEqual(['answer-1', 'answer-2', 'answer-3', 'other']);
  });

  it('are sent again, all that is missing, when a backup was put back that goes by the old name', async () => {
    const before = await start();
    const local = await device();
    for (const minute of [1, 2, 3]) await local.keep(given(`answer-${minute}`, minute));
    await exchange(local, network(before));
    const { history } = await before.call(apiRoutes.answers);
    await before.end();
    // As a database's own tools put it back: two answers fewer, and the history is called as before.
    const after = await start();
    await after.send([given('answer-1', 1)]);
    const behind = network(after);
    const restored: Fetch = async (path, init) => {
      const reply = await behind(path, init);
      if (!path.startsWith('/api/lines?') && !path.startsWith('/api/answers?')) return reply;
      return new Response(JSON.stringify({ ...((await reply.json()) as object), history }));
    };
    expect((await exchange(local, restored)).result).toBe('done');
    expect(await kept(after)).toEqual(['answer-1', 'answer-2', 'answer-3']);
    expect(await local.waiting()).toBe(0);
    // Once, and not at every exchange from then on.
    const asked: string[] = [];
    await exchange(local, (path, init) => {
      asked.push(`${init?.method ?? 'GET'} ${path}`);
      return restored(path, init);
    });
    expect(asked).toEqual(['PUT /api/settings', 'GET /api/lines?after=3&limit=1000']);
  });

  it('are sent again after erasing on the server alone', async () => {
    const server = await start();
    const local = await device();
    await local.keep(given('answer-1', 1));
    await exchange(local, network(server));
    await server.ask({ method: 'DELETE', url: '/api/learner?confirm=me' });
    expect(await kept(server)).toEqual([]);
    await local.keep(given('answer-2', 2));
    expect((await exchange(local, network(server))).result).toBe('done');
    expect((await kept(server)).toSorted()).toEqual(['answer-1', 'answer-2']);
  });

  it('are sent again where all that was known of the other history is how the learner stood', async () => {
    const server = await start();
    await server.send([given('from-elsewhere', 0)]);
    const phone = await device();
    const ask = network(server);
    const withoutLines: Fetch = (path, init) =>
      path.startsWith('/api/lines') ? Promise.reject(new TypeError('no network')) : ask(path, init);
    await exchange(phone, withoutLines);
    await phone.keep(given('a', 1));
    await exchange(phone, withoutLines);
    expect(await phone.waiting()).toBe(0);
    await server.store.erasePractice('me');
    const seen = await exchange(phone, ask);
    expect(seen).toMatchObject({ result: 'done', ahead: [null] });
    expect(await kept(server)).toEqual(['a']);
    expect(await phone.value('ahead')).toBeUndefined();
  });

  it('are sent again where a page from before answers were kept in short knew another history', async () => {
    const server = await start();
    const phone = await device();
    await phone.keep(given('a', 0));
    await exchange(phone, network(server));
    // As that page left it.
    await phone.setValue('fetched', (await phone.value('lines'))!);
    await phone.remove('lines');
    await server.store.erasePractice('me');
    expect((await exchange(phone, network(server))).result).toBe('done');
    expect(await kept(server)).toEqual(['a']);
  });

  it('are sent again also where the page was left in the middle of it', async () => {
    const server = await start();
    const phone = await device();
    await phone.keep(given('a', 0));
    await exchange(phone, network(server));
    await server.store.erasePractice('me');
    const left = new Proxy(phone, {
      get: (local, name) => {
        if (name !== 'store') return Reflect.get(local, name);
        const { store } = local;
        return new Proxy(store, {
          get: (_, of) =>
            of === 'change'
              ? (names: string[], work: never) =>
                  names.includes('lines')
                    ? Promise.reject(new Error('left'))
                    : store.change(names as never, work)
              : Reflect.get(store, of).bind(store),
        });
      },
    });
    await expect(exchange(left, network(server))).rejects.toThrow('left');
    expect((await exchange(phone, network(server))).result).toBe('done');
    expect(await kept(server)).toEqual(['a']);
  });

  it('that were here in short only leave with the history they are of', async () => {
    const server = await start();
    await server.send([given('from-elsewhere', 0), given('more', 1)]);
    const phone = await device();
    const ask = network(server);
    const withoutWhole: Fetch = (path, init) =>
      path.startsWith('/api/answers?') ? Promise.reject(new TypeError('no network')) : ask(path, init);
    await phone.keep(given('a', 2));
    await exchange(phone, withoutWhole);
    expect(await ids(phone)).toEqual(['from-elsewhere', 'more', 'a']);
    await server.store.erasePractice('me');
    await server.send([given('begun-again', 3)]);
    const seen = await exchange(phone, ask);
    expect(seen).toMatchObject({ result: 'done', anew: [['a']], answers: ['begun-again', 'a'] });
    expect(await ids(phone)).toEqual(['a', 'begun-again']);
    expect(await kept(server)).toEqual(['begun-again', 'a']);
  });

  it('go in smaller pieces when together they are too much; one that is too much by itself stays here', async () => {
    const server = await start();
    const local = await device();
    const all = Array.from({ length: 9 }, (_, minute) => given(`answer-${minute}`, minute));
    for (const answer of all) await local.keep(answer);
    const most = 3 * JSON.stringify(all[0]).length;
    const behind = network(server);
    const narrow: Fetch = async (path, init) => {
      const body = String(init?.body ?? '');
      const problem = { code: 'body-too-large', message: 'Too large.', hint: 'Send fewer.' };
      if (body.length > most || body.includes('"answer-4"'))
        return new Response(JSON.stringify(problem), { status: 413 });
      return behind(path, init);
    };
    expect((await exchange(local, narrow)).result).toBe('done');
    expect(await kept(server)).toEqual(all.map(({ id }) => id).filter((id) => id !== 'answer-4'));
    expect(await ids(local)).toContain('answer-4');
  });

  it('wait when a network in between refuses with a page of its own', async () => {
    const local = await device();
    await local.keep(given('answer-1', 1));
    for (const status of [400, 403, 404, 413, 429, 500, 503])
      expect(
        (await exchange(local, async () => new Response('<html>sign in</html>', { status }))).result,
      ).toBe('offline');
    expect(await local.waiting()).toBe(1);
  });

  it('wait when a reply says nothing of any of them', async () => {
    const phone = await device();
    await phone.keep(given('a', 0));
    let asked = 0;
    const silent: Fetch = async () => {
      if (++asked > 5) throw new TypeError('no end');
      return Response.json({ results: [] });
    };
    expect((await exchange(phone, silent)).result).toBe('offline');
    expect([asked, await phone.waiting()]).toEqual([1, 1]);
  });

  it('wait when the server answers nonsense', async () => {
    const local = await device();
    await local.keep(given('answer-1', 1));
    for (const reply of [
      '<html>sign in to this network</html>',
      '{"results":[]} trailing',
      '{"results":"all"}',
    ])
      expect((await exchange(local, async () => new Response(reply))).result).toBe('offline');
    expect(await local.waiting()).toBe(1);
  });
});

describe('a device', () => {
  /** A store as the page's first version made it, open in another tab. */
  const older = (name: string): Promise<IDBDatabase> =>
    new Promise((resolve, reject) => {
      const opening = indexedDB.open(name, 1);
      opening.onerror = () => reject(opening.error);
      opening.onupgradeneeded = () => {
        opening.result.createObjectStore('answers', { keyPath: 'id' }).createIndex('by-time', 'at');
        opening.result.createObjectStore('waiting', { autoIncrement: true });
        opening.result.createObjectStore('values');
      };
      opening.onsuccess = () => resolve(opening.result);
    });

  it('that was used before answers were kept in short has the old ones in short as well', async () => {
    const name = `device-${++names}`;
    const old = await older(name);
    await new Promise<void>((resolve) => {
      const kept = old.transaction(['answers', 'waiting'], 'readwrite');
      for (const minute of [2, 1]) kept.objectStore('answers').put(given(`old-${minute}`, minute));
      kept.objectStore('waiting').put({ id: 'old-1' });
      kept.oncomplete = () => resolve();
    });
    old.close();
    const local = await Local.open(name);
    open.devices.push(local);
    expect(await ids(local)).toEqual(['old-1', 'old-2']);
    expect(await local.waiting()).toBe(1);
  });

  it('that was told how its learner stands in a form of before forgets it, and is told anew', async () => {
    const name = `device-${++names}`;
    const old = await older(name);
    await new Promise<void>((resolve) => {
      const kept = old.transaction('values', 'readwrite');
      const recall = { kind: 'begun', provenOn: ['c1', 'c2'] };
      kept.objectStore('values').put({ history: 'h', last: 3, recalls: { changeover: recall } }, 'ahead');
      kept.objectStore('values').put('dark', 'theme');
      kept.oncomplete = () => resolve();
    });
    old.close();
    const local = await Local.open(name);
    open.devices.push(local);
    expect(await local.value('ahead')).toBeUndefined();
    expect(await local.value('theme')).toBe('dark');
  });

  it('says what is in the way when another tab holds an older store', async () => {
    const name = `device-${++names}`;
    const old = await older(name);
    await expect(Local.open(name)).rejects.toThrow('Close that tab.');
    old.close();
  });

  it('keeps an answer once, whole and in short', async () => {
    const local = await device();
    const answer = given('answer-1', 1);
    await local.keep(answer);
    await local.keep({ ...answer, at: answer.at + 1 });
    expect(await inLine(local, 10)).toEqual([{ key: 1, answer }]);
    expect(await local.lines()).toMatchObject([
      { id: 'answer-1', at: answer.at, correct: answer.mark.correct },
    ]);
  });
});

describe('erasing', () => {
  it('leaves nothing about the learner on the server and on the device, only the questions', async () => {
    const server = await start();
    const local = await device();
    for (const minute of [1, 2]) await local.keep(given(`answer-${minute}`, minute));
    await exchange(local, network(server));
    await local.keep(given('answer-3', 3));
    await local.setValue('theme', 'dark');
    await local.setValue('bank', { etag: 'a', bank: { topics: [] } });
    expect(await eraseAtServer(network(server), 'me')).toBeUndefined();
    await eraseDevice(local);
    expect(await kept(server)).toEqual([]);
    expect(await ids(local)).toEqual([]);
    expect(await local.waiting()).toBe(0);
    for (const name of [
      'settings',
      'fetched',
      'lines',
      'ahead',
      'theme',
      'open',
      'placing',
      'erasing',
    ] as const)
      expect(await local.value(name), name).toBeUndefined();
    expect(await local.value('bank')).toBeDefined();
    // The next exchange brings nothing back.
    expect((await exchange(local, network(server))).answers).toEqual([]);
    expect(await kept(server)).toEqual([]);
  });

  it.each([
    ['there is no network', () => Promise.reject(new TypeError('no network')), /cannot be reached/],
    ['a network answers in its place', async () => new Response('<html>sign in</html>'), /not the server/],
  ])('says that nothing was erased where %s', async (_, fetch: Fetch, words) => {
    expect(await eraseAtServer(fetch, 'me')).toMatch(words);
  });

  it('says what the server says where it refuses', async () => {
    const server = await start();
    expect(await eraseAtServer(network(server), 'somebody-else')).toMatch(
      /^Nothing was erased: .*\?confirm=me/,
    );
    expect(await kept(server)).toEqual([]);
  });
});

describe('settings', () => {
  const wanted = (changedAt: number, minutesADay: number): Settings => ({
    changedAt,
    minutesADay,
    assessmentAt: null,
    newSkillsADay: null,
    placement: null,
  });

  it('changed last on any device hold on all of them', async () => {
    const server = await start();
    const [phone, desk] = [await device(), await device()];
    await phone.setValue('settings', wanted(MORNING + 2, 20));
    await desk.setValue('settings', wanted(MORNING + 1, 10));
    await exchange(phone, network(server));
    const { settings } = await exchange(desk, network(server));
    expect(settings.map(({ minutesADay }) => minutesADay)).toEqual([20]);
    expect((await desk.value('settings'))?.minutesADay).toBe(20);
    const fresh = await device();
    await exchange(fresh, network(server));
    expect((await fresh.value('settings'))?.minutesADay).toBe(20);
  });
});
