/** How often something may be tried: counted in the store, so over all servers on it together. */
import { afterEach, describe, expect, it } from 'vitest';
import { shownFirstRunKey } from '../../src/server/index.ts';
import { Browser, type ClassServing, classServing, PASSWORD, quickPasswords } from './class-serving.ts';
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

const codeOf = (reply: { json(): unknown }): string => (reply.json() as { code: string }).code;
const waitOf = (reply: { headers: Record<string, unknown> }): number => Number(reply.headers['retry-after']);

/** Signs in wrongly until it has to wait; gives after how many tries, and for how many seconds. */
async function wrongly(at: readonly Serving[], name: string, address: string): Promise<[number, number]> {
  for (let tries = 0; ; tries++) {
    const reply = await signIn(at[tries % at.length]!, name, `wrong ${tries}`, address);
    if (reply.statusCode === 429) return [tries, waitOf(reply)];
    expect(reply.statusCode).toBe(403);
  }
}

describe('wrong passwords', () => {
  it('are waited for after five, twice as long each time, and never longer than a quarter of an hour', async () => {
    const both = await started();
    expect(await wrongly(both, 'lea.learner', '192.0.2.1')).toEqual([5, 1]);
    const waits: number[] = [];
    for (let times = 0; times < 14; times++) {
      now += 1000 * (waits.at(-1) ?? 1);
      expect((await signIn(both[0], 'lea.learner', 'wrong')).statusCode).toBe(403);
      waits.push(waitOf(await signIn(both[1], 'lea.learner', PASSWORD)));
    }
    expect(waits).toEqual([2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900, 900, 900, 900]);
    now += 900_000;
    expect((await signIn(both[0], 'lea.learner', PASSWORD)).statusCode).toBe(200);
    // A right one ends it.
    expect((await signIn(both[1], 'lea.learner', 'wrong')).statusCode).toBe(403);
  });

  it('can’t slip through by coming all at once', async () => {
    const both = await started();
    const replies = await Promise.all(
      Array.from({ length: 30 }, (_, at) => signIn(both[at % 2]!, 'lea.learner', `wrong ${at}`)),
    );
    const statuses = replies.map(({ statusCode }) => statusCode);
    expect(statuses.filter((status) => status === 403)).toHaveLength(5);
    expect(statuses.filter((status) => status === 429)).toHaveLength(25);
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

describe('wrong passwords of one', () => {
  it('keep nobody out from another address, and the account’s own devices from nowhere', async () => {
    const both = await started();
    const known = await signIn(both[0], 'lea.learner', PASSWORD, '192.0.2.9');
    const device = [known.headers['set-cookie']].flat().map((set) => String(set).split(';')[0]!);
    await wrongly(both, 'lea.learner', '192.0.2.1');
    expect((await signIn(both[0], 'lea.learner', PASSWORD, '192.0.2.2')).statusCode).toBe(200);
    // From the very address from which it was guessed.
    await wrongly(both, 'lea.learner', '192.0.2.1');
    const here = await both[1].ask({
      method: 'POST',
      url: '/api/sign-in',
      payload: { signIn: 'lea.learner', password: PASSWORD },
      headers: {
        'x-forwarded-proto': 'https',
        'x-forwarded-for': '192.0.2.1',
        cookie: device.find((one) => one.startsWith('polewise_device='))!,
      },
    });
    expect(here.statusCode).toBe(200);
  });

  it('from a hundred addresses make a new device wait, and no known one', async () => {
    const both = await started();
    const known = await signIn(both[0], 'lea.learner', PASSWORD, '192.0.2.9');
    const cookie = [known.headers['set-cookie']].flat().map((set) => String(set).split(';')[0]!)[1]!;
    for (let at = 0; at < 100; at++) await signIn(both[at % 2]!, 'lea.learner', 'wrong', `198.51.100.${at}`);
    const elsewhere = await signIn(both[0], 'lea.learner', PASSWORD, '203.0.113.50');
    expect([elsewhere.statusCode, codeOf(elsewhere), waitOf(elsewhere)]).toEqual([
      429,
      'too-many-tries',
      900,
    ]);
    expect((elsewhere.json() as { hint: string }).hint).toContain('a link of your tutor');
    const headers = { 'x-forwarded-proto': 'https', 'x-forwarded-for': '203.0.113.51', cookie };
    const payload = { signIn: 'lea.learner', password: PASSWORD };
    expect((await both[1].ask({ method: 'POST', url: '/api/sign-in', payload, headers })).statusCode).toBe(
      200,
    );
    // It is a wait and no lock: the guessing goes on, and who waited is let in.
    for (let at = 0; at < 20; at++) await signIn(both[0], 'lea.learner', 'wrong', `198.51.100.${150 + at}`);
    now += 900_000;
    expect((await signIn(both[0], 'lea.learner', PASSWORD, '203.0.113.50')).statusCode).toBe(200);
  });

  it('by the hundred from a college’s address make the others there wait half a minute, once', async () => {
    const both = await started();
    for (let at = 0; at < 100; at++) await signIn(both[at % 2]!, `guess.${at}`, 'wrong');
    const first = await signIn(both[0], 'lea.learner', PASSWORD);
    expect([first.statusCode, waitOf(first)]).toEqual([429, 30]);
    expect((await signIn(both[1], 'lea.learner', PASSWORD, '192.0.2.2')).statusCode).toBe(200);
    for (let at = 0; at < 50; at++) await signIn(both[at % 2]!, `more.${at}`, 'wrong');
    now += 30_000;
    expect((await signIn(both[0], 'lea.learner', PASSWORD)).statusCode).toBe(200);
  });

  it('don’t tell by a cookie of one’s own making that a device is known', async () => {
    const both = await started();
    await wrongly(both, 'lea.learner', '192.0.2.1');
    for (const mark of [`${'A'.repeat(12)}.${'A'.repeat(43)}`, 'x', `${'A'.repeat(12)}.`, '~~~']) {
      const reply = await both[0].ask({
        method: 'POST',
        url: '/api/sign-in',
        payload: { signIn: 'lea.learner', password: PASSWORD },
        headers: {
          'x-forwarded-proto': 'https',
          'x-forwarded-for': '192.0.2.1',
          cookie: `polewise_device=${mark}`,
        },
      });
      expect(reply.statusCode).toBe(429);
    }
  });
});

describe('guesses', () => {
  it('at links hold up nobody: a token can’t be guessed', async () => {
    const both = await started();
    for (let at = 0; at < 150; at++)
      expect((await post(both[at % 2]!, '/api/sign-in/link', { token: `guess-${at}` })).statusCode).toBe(403);
    const { token } = await server.store.people.links.make(server.learner.person.id);
    expect((await post(both[0], '/api/sign-in/link', { token })).statusCode).toBe(200);
  });

  it('at codes by the hundred make the right one from that address wait half a minute, and from no other', async () => {
    const both = await started();
    for (let at = 0; at < 100; at++)
      expect((await post(both[at % 2]!, '/api/join/look', { code: `0000-${1000 + at}` })).statusCode).toBe(
        404,
      );
    const code = server.ownClass.joiningCode;
    expect(waitOf(await post(both[1], '/api/join/look', { code }))).toBe(30);
    expect((await post(both[0], '/api/join/look', { code }, '192.0.2.2')).statusCode).toBe(200);
    now += 30_000;
    expect((await post(both[1], '/api/join/look', { code })).statusCode).toBe(200);
  });

  it('at the first-run key hold up nobody: it can’t be guessed', async () => {
    now = NOW - (NOW % (60 * MINUTE));
    server = await classServing();
    second = await serving({ class: {}, passwords: quickPasswords(), now: () => now });
    const ask = (key: string) =>
      second.ask({
        method: 'POST',
        url: '/api/first-run',
        payload: { key, name: 'Ada', signIn: 'ada', password: PASSWORD },
      });
    for (let at = 0; at < 30; at++) expect((await ask('0000')).statusCode).toBe(403);
    expect((await ask((await shownFirstRunKey(second.store.people))!)).statusCode).toBe(200);
  });

  it('at one’s own old password are waited for, in that session alone', async () => {
    await started();
    const headers = { 'x-forwarded-proto': 'https' };
    const { browser, person } = server.learner;
    const set = (by: Browser, old: string) =>
      by.ask({
        method: 'PUT',
        url: '/api/password',
        payload: { password: 'ten potted ferns', old },
        headers,
      });
    for (let at = 0; at < 5; at++) expect((await set(browser, `wrong ${at}`)).statusCode).toBe(403);
    expect((await set(browser, PASSWORD)).statusCode).toBe(429);
    const other = new Browser(server);
    other.cookie = `polewise_session=${await server.store.people.sessions.begin(person.id, 'another')}`;
    expect((await set(other, PASSWORD)).statusCode).toBe(200);
  });
});

describe('a password', () => {
  const refused = {
    'one of those tried first': '1234567890',
    'the same in capitals': 'QWERTYUIOP',
    'a common one twice': 'passwordpassword',
    'one letter over and over': 'zzzzzzzzzzzz',
    'the name for signing in, twice': 'nora.newnora.new',
    'the name for signing in and the year': 'nora.new2026',
    'the name of the program': 'Polewise-2026',
  };
  const code = async (password: string): Promise<string> => {
    const body = {
      code: server.ownClass.joiningCode,
      name: `N ${password.length}`,
      signIn: 'nora.new',
      password,
    };
    const reply = await post(server, '/api/join', body);
    return reply.statusCode === 200 ? 'taken' : codeOf(reply);
  };

  for (const [what, password] of Object.entries(refused))
    it(`that is ${what} is refused`, async () => {
      await started();
      expect(await code(password)).toBe('weak-password');
    });

  it('is taken whatever signs it is made of, when it is long enough', async () => {
    await started();
    expect(await code('short')).toBe('bad-value');
    expect(await code('the ferns are on the sill')).toBe('taken');
  });
});
