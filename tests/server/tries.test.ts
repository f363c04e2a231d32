/** How often something may be tried: counted in the store, so over all servers on it together. */
import { afterEach, describe, expect, it } from 'vitest';
import { peopleRoutes } from '../../shared/api-people.ts';
import { type ClassServing, classServing, PASSWORD, quickPasswords } from './class-serving.ts';
import { NOW, type Serving, serving } from './serving.ts';

let server: ClassServing;
let second: Serving;
let now = NOW;
afterEach(async () => {
  await second.end();
  await server.end();
});
const MINUTE = 60_000;

/** Two servers on one store, behind a proxy that says whose request it is. */
async function started(): Promise<readonly [Serving, Serving]> {
  now = NOW - (NOW % (60 * MINUTE));
  const options = { class: { behindProxy: true }, now: () => now };
  server = await classServing(options);
  second = await serving({ ...options, wrap: () => server.store, passwords: quickPasswords() });
  return [server, second];
}

const post = (at: Serving, url: string, payload: object, address = '192.0.2.1') =>
  at.ask({
    method: 'POST',
    url,
    payload,
    headers: { 'x-forwarded-proto': 'https', 'x-forwarded-for': `203.0.113.9, ${address}` },
  });
const signIn = (at: Serving, name: string, password: string, address?: string) =>
  post(at, '/api/sign-in', { signIn: name, password }, address);

describe('wrong passwords', () => {
  it('of one account are refused after ten, on whichever server, from wherever, also when the next one is right', async () => {
    const both = await started();
    for (let at = 0; at < 10; at++)
      expect((await signIn(both[at % 2]!, 'lea.learner', 'wrong', `192.0.2.${at}`)).statusCode).toBe(403);
    for (const one of both) {
      const reply = await signIn(one, 'lea.learner', PASSWORD, '192.0.2.77');
      expect([reply.statusCode, (reply.json() as { code: string }).code]).toEqual([429, 'too-many-tries']);
      expect(reply.headers['retry-after']).toBe('600');
      expect(reply.headers['set-cookie']).toBeUndefined();
    }
    expect((await signIn(both[0], 'lars.learner', PASSWORD)).statusCode).toBe(200);
    now += 10 * MINUTE;
    expect((await signIn(both[1], 'lea.learner', PASSWORD)).statusCode).toBe(200);
  });

  it('can’t slip through by coming all at once', async () => {
    const both = await started();
    const replies = await Promise.all(
      Array.from({ length: 30 }, (_, at) => signIn(both[at % 2]!, 'lea.learner', `wrong ${at}`)),
    );
    const statuses = replies.map(({ statusCode }) => statusCode);
    expect(statuses.filter((status) => status === 403)).toHaveLength(10);
    expect(statuses.filter((status) => status === 429)).toHaveLength(20);
  });

  it('of many accounts are refused after a hundred from one address, and not from another', async () => {
    const both = await started();
    for (let at = 0; at < 100; at++) await signIn(both[at % 2]!, `guess.${at}`, 'wrong');
    expect((await signIn(both[0], 'lea.learner', PASSWORD)).statusCode).toBe(429);
    expect((await signIn(both[1], 'lea.learner', PASSWORD, '192.0.2.2')).statusCode).toBe(200);
  });

  it('don’t keep a class out that signs in rightly from one address, all at the same moment', async () => {
    const both = await started();
    const passwordHash = await quickPasswords().hash(PASSWORD);
    for (let at = 0; at < 300; at++)
      await server.store.people.persons.make({
        name: `L ${at}`,
        role: 'learner',
        signIn: `l${at}`,
        passwordHash,
      });
    for (let at = 0; at < 90; at++) await signIn(both[at % 2]!, `guess.${at}`, 'wrong');
    const replies = await Promise.all(
      Array.from({ length: 300 }, (_, at) => signIn(both[at % 2]!, `l${at}`, PASSWORD)),
    );
    expect(new Set(replies.map(({ statusCode }) => statusCode))).toEqual(new Set([200]));
  });

  it('don’t count when the server could not look at them', async () => {
    await started();
    await second.end();
    second = await serving({
      class: {},
      now: () => now,
      passwords: quickPasswords(),
      wrap: () =>
        Object.assign(Object.create(server.store), {
          people: {
            ...server.store.people,
            persons: {
              ...server.store.people.persons,
              bySignIn: () => Promise.reject(Object.assign(new Error('gone'), { code: 'ECONNREFUSED' })),
            },
          },
        }),
    });
    for (let at = 0; at < 12; at++)
      expect((await signIn(second, 'lea.learner', PASSWORD)).statusCode).toBe(503);
    expect((await signIn(server, 'lea.learner', PASSWORD)).statusCode).toBe(200);
  });
});

describe('guesses', () => {
  it('at links and codes are refused after a hundred from one address', async () => {
    const both = await started();
    const guess = (url: string, body: object, at: number) => post(both[at % 2]!, url, body);
    for (let at = 0; at < 100; at++) {
      expect((await guess('/api/sign-in/link', { token: `guess-${at}` }, at)).statusCode).toBe(403);
      expect((await guess('/api/join/look', { code: `0000-${1000 + at}` }, at)).statusCode).toBe(404);
    }
    const code = server.ownClass.joiningCode;
    expect((await guess('/api/sign-in/link', { token: 'x' }, 0)).statusCode).toBe(429);
    expect((await guess('/api/join/look', { code }, 1)).statusCode).toBe(429);
  });

  it('at the first-run key are refused after ten, from wherever', async () => {
    const both = await started();
    const body = { key: '0000', name: 'A', signIn: 'aa', password: PASSWORD };
    for (let at = 0; at < 10; at++)
      expect((await post(both[at % 2]!, '/api/first-run', body, `192.0.2.${at}`)).statusCode).toBe(403);
    expect((await post(both[0], '/api/first-run', body, '192.0.2.99')).statusCode).toBe(429);
  });

  it('at one’s own old password are refused after ten', async () => {
    await started();
    const headers = { 'x-forwarded-proto': 'https' };
    const { browser } = server.learner;
    const set = (old: string) =>
      browser.ask({
        method: 'PUT',
        url: '/api/password',
        payload: { password: 'ten potted ferns', old },
        headers,
      });
    for (let at = 0; at < 10; at++) expect((await set(`wrong ${at}`)).statusCode).toBe(403);
    expect((await set(PASSWORD)).statusCode).toBe(429);
  });
});

describe('joining', () => {
  it('is possible for four hundred an hour from one address', async () => {
    const both = await started();
    const code = server.ownClass.joiningCode;
    const join = (at: number) =>
      post(both[at % 2]!, peopleRoutes.join.path, {
        code,
        name: `L ${at}`,
        signIn: `learner-${at}`,
        password: PASSWORD,
      });
    for (let at = 0; at < 400; at++) expect((await join(at)).statusCode).toBe(200);
    expect((await join(400)).statusCode).toBe(429);
    now += 60 * MINUTE;
    expect((await join(400)).statusCode).toBe(200);
  });
});
