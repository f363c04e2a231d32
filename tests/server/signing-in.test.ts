/** Getting in and being put out again, as a browser does it. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import { peopleRoutes } from '../../shared/api-people.ts';
import { shownFirstRunKey } from '../../src/server/index.ts';
import { LINK_LASTS, SESSION_LASTS } from '../../src/store/index.ts';
import { Browser, type ClassServing, classServing, PASSWORD, quickPasswords } from './class-serving.ts';
import { NOW, type Serving, serving } from './serving.ts';

let server: Serving;
afterEach(() => server.end());
const started = async (options: Parameters<typeof classServing>[0] = {}): Promise<ClassServing> => {
  const made = await classServing(options);
  server = made;
  return made;
};
/** A server with nobody in it. */
const empty = async (options: Parameters<typeof serving>[0] = {}): Promise<Serving> => {
  server = await serving({ class: {}, passwords: quickPasswords(), ...options });
  return server;
};
const tokenOf = (address: string): string => /#\/enter\/(.+)$/.exec(address)![1]!;

const account = { name: 'Ada Office', signIn: 'ada', password: PASSWORD };

describe('the first run', () => {
  it('makes the administrator with the key that the server prints, once', async () => {
    const { store } = await empty();
    const key = (await shownFirstRunKey(store.people))!;
    expect(key).toMatch(/^(\w{4}-){4}\w{4}$/);
    const browser = new Browser(server);
    expect(await browser.call(peopleRoutes.me)).toEqual({ mode: 'class', person: null, firstRun: true });
    const wrong = { ...account, key: 'AAAA-AAAA-AAAA-AAAA-AAAA' };
    expect(await browser.refusedBy(peopleRoutes.firstRun, { body: wrong })).toBe('first-run-refused');
    // As somebody types it who reads it from a screen.
    const body = { ...account, key: key.toLowerCase().replaceAll('-', ' ').replaceAll('0', 'o') };
    expect(await browser.call(peopleRoutes.firstRun, { body })).toMatchObject({
      person: { name: 'Ada Office', role: 'admin', hasPassword: true },
      firstRun: false,
    });
    expect(await browser.call(peopleRoutes.me)).toMatchObject({ person: { signIn: 'ada' } });
    expect(await shownFirstRunKey(store.people)).toBeNull();
    const other = { ...account, signIn: 'second', key };
    expect(await new Browser(server).refusedBy(peopleRoutes.firstRun, { body: other })).toBe(
      'first-run-refused',
    );
  });

  it('makes one administrator when several try at once', async () => {
    const { store } = await empty();
    const key = (await shownFirstRunKey(store.people))!;
    const replies = await Promise.all(
      ['a1', 'a2', 'a3', 'a4'].map((signIn) =>
        new Browser(server).ask({
          method: 'POST',
          url: peopleRoutes.firstRun.path,
          payload: { ...account, signIn, key },
        }),
      ),
    );
    expect(replies.map(({ statusCode }) => statusCode).sort()).toEqual([200, 403, 403, 403]);
    expect((await store.people.persons.find('', 0, 10)).total).toBe(1);
  });
});

describe('signing in with a password', () => {
  it('gives a cookie that scripts, other sites and plain connections don’t get', async () => {
    const { nobody } = await started({ class: { behindProxy: true } });
    const headers = { 'x-forwarded-proto': 'https' };
    const payload = { signIn: 'Lea.Learner ', password: PASSWORD };
    const reply = await nobody.ask({ method: 'POST', url: '/api/sign-in', payload, headers });
    expect(reply.statusCode).toBe(200);
    const [cookie, device] = reply.headers['set-cookie'] as [string, string];
    expect(device).toMatch(
      /^polewise_device=[\w-]{12}\.[\w-]{43}; Max-Age=34560000; Path=\/; HttpOnly; SameSite=Strict; Secure$/,
    );
    expect(reply.headers['strict-transport-security']).toBe('max-age=31536000');
    expect(cookie).toMatch(/^polewise_session=[\w-]{43}; /);
    expect(cookie.split('; ').slice(1).sort()).toEqual(
      ['HttpOnly', `Max-Age=${SESSION_LASTS / 1000}`, 'Path=/', 'SameSite=Strict', 'Secure'].sort(),
    );
    expect(reply.headers['cache-control']).toBe('no-store');
    expect(reply.body).not.toContain(nobody.cookie.split('=')[1]!);
  });

  it('gives a cookie without Secure on a machine of one’s own, where there is no https', async () => {
    const { nobody } = await started();
    const reply = await nobody.ask({
      method: 'POST',
      url: '/api/sign-in',
      payload: { signIn: 'lea.learner', password: PASSWORD },
    });
    expect(reply.headers['strict-transport-security']).toBeUndefined();
    expect(String(reply.headers['set-cookie'])).not.toContain('Secure');
    expect(String(reply.headers['set-cookie'])).toContain('HttpOnly; SameSite=Strict');
  });

  it('refuses with the same words, after the same work, whether there is such a person or not', async () => {
    const passwords = quickPasswords();
    const matches = vi.spyOn(passwords, 'matches');
    const { admin, nobody } = await started({ passwords });
    await admin.browser.call(peopleRoutes.newPerson, { body: { name: 'Without Password', role: 'learner' } });
    const replies: string[] = [];
    for (const signIn of [
      'lea.learner',
      'nobody.here',
      'Not A Name!',
      '\u0000',
      'without.password',
      'x'.repeat(200),
    ]) {
      const reply = await nobody.ask({
        method: 'POST',
        url: '/api/sign-in',
        payload: { signIn, password: 'wrong password' },
      });
      replies.push(`${reply.statusCode} ${reply.body}`);
    }
    expect(new Set(replies).size).toBe(1);
    expect(replies[0]).toMatch(/^403 .*sign-in-refused/);
    // Each time a password was held against a hash, somebody's or nobody's.
    expect(matches).toHaveBeenCalledTimes(6);
  });

  it('holds against a hash also where there is none, and is never right then', async () => {
    await started();
    const passwords = quickPasswords();
    expect(await passwords.matches('nobody has this password', null)).toBe(false);
    const known = await passwords.hash('ﬁve ferns, potted');
    expect(known).toMatch(/^\$argon2id\$v=19\$/);
    expect(await passwords.matches('five ferns, potted', known)).toBe(true);
    expect(await passwords.matches('five ferns, pottee', known)).toBe(false);
  });

  it('ends the session that the browser had before', async () => {
    const { learner } = await started();
    const before = learner.browser.cookie;
    await learner.browser.call(peopleRoutes.signIn, { body: { signIn: 'lea.learner', password: PASSWORD } });
    expect(learner.browser.cookie).not.toBe(before);
    const old = new Browser(server);
    old.cookie = before;
    expect(await old.refusedBy(peopleRoutes.sessions)).toBe('sign-in-first');
  });
});

describe('a session', () => {
  it('ends at once when it is revoked, wherever and by whomever', async () => {
    const { learner, tutor, admin } = await started();
    const second = new Browser(server);
    await second.call(peopleRoutes.signIn, { body: { signIn: 'lea.learner', password: PASSWORD } });
    const { sessions } = await learner.browser.call(peopleRoutes.sessions);
    expect(sessions).toHaveLength(2);
    const other = sessions.find(({ current }) => !current)!;
    await learner.browser.call(peopleRoutes.endSession, { params: { session: other.id } });
    expect(await second.refusedBy(apiRoutes.answers)).toBe('sign-in-first');
    expect(await second.call(peopleRoutes.me)).toMatchObject({ person: null });
    expect(await learner.browser.refusedBy(peopleRoutes.endSession, { params: { session: other.id } })).toBe(
      'no-such-thing',
    );

    await second.call(peopleRoutes.signIn, { body: { signIn: 'lea.learner', password: PASSWORD } });
    expect(await learner.browser.call(peopleRoutes.endOtherSessions)).toEqual({ ended: 1 });
    expect(await second.refusedBy(apiRoutes.answers)).toBe('sign-in-first');
    await learner.browser.call(apiRoutes.answers);

    const { id: person } = learner.person;
    expect(await tutor.browser.call(peopleRoutes.endSessionsOf, { params: { person } })).toEqual({
      ended: 1,
    });
    expect(await learner.browser.refusedBy(apiRoutes.answers)).toBe('sign-in-first');

    const role = { params: { person: tutor.person.id }, body: { role: 'learner' } };
    await admin.browser.call(peopleRoutes.changeRole, role);
    expect(await tutor.browser.refusedBy(peopleRoutes.classes)).toBe('sign-in-first');
  });

  it('ends by signing out, in the browser and on the server', async () => {
    const { learner } = await started();
    const before = learner.browser.cookie;
    await learner.browser.call(peopleRoutes.signOut);
    expect(learner.browser.cookie).toBe('polewise_session=');
    const old = new Browser(server);
    old.cookie = before;
    expect(await old.refusedBy(apiRoutes.recalls)).toBe('sign-in-first');
    await new Browser(server).call(peopleRoutes.signOut);
  });

  it('lasts thirty days from when it was used last', async () => {
    let now = NOW;
    const { learner } = await started({ now: () => now });
    for (let month = 0; month < 3; month++) {
      now += SESSION_LASTS - 1000;
      await learner.browser.call(apiRoutes.settings);
    }
    now += SESSION_LASTS;
    expect(await learner.browser.refusedBy(apiRoutes.settings)).toBe('sign-in-first');
  });

  it.each([
    'polewise_session=x',
    'polewise_session=',
    `polewise_session=${'A'.repeat(43)}`,
    ';;;=',
    'other=1',
  ])('is not made of whatever else a cookie says (%j)', async (cookie) => {
    const { nobody } = await started();
    nobody.cookie = cookie;
    expect(await nobody.refusedBy(apiRoutes.settings)).toBe('sign-in-first');
  });
});

describe('a link', () => {
  const linkOf = async ({ tutor, learner }: ClassServing): Promise<string> => {
    const params = { person: learner.person.id };
    const { link } = await tutor.browser.call(peopleRoutes.newLink, { params });
    expect(link).toEqual({
      address: expect.stringMatching(/^http:\/\/localhost:8024\/#\/enter\/[\w-]{43}$/),
      until: NOW + LINK_LASTS,
    });
    return tokenOf(link.address);
  };

  it('lets in once, ends what was before, and wants a password', async () => {
    const class1 = await started();
    const token = await linkOf(class1);
    const fresh = new Browser(server);
    expect(await fresh.call(peopleRoutes.signInWithLink, { body: { token } })).toMatchObject({
      person: { id: class1.learner.person.id, hasPassword: false, classes: [{ title: 'Flour line' }] },
    });
    expect(await class1.learner.browser.refusedBy(apiRoutes.answers)).toBe('sign-in-first');
    const again = { body: { token } };
    expect(await new Browser(server).refusedBy(peopleRoutes.signInWithLink, again)).toBe('link-refused');
    const old = { body: { signIn: 'lea.learner', password: PASSWORD } };
    expect(await new Browser(server).refusedBy(peopleRoutes.signIn, old)).toBe('sign-in-refused');
    const chosen = { body: { password: 'ten potted ferns' } };
    expect(await fresh.call(peopleRoutes.setPassword, chosen)).toMatchObject({
      person: { hasPassword: true },
    });
    const now = { body: { signIn: 'lea.learner', password: 'ten potted ferns' } };
    await new Browser(server).call(peopleRoutes.signIn, now);
  });

  it('lets in one of many who use it at the same moment', async () => {
    const token = await linkOf(await started());
    const replies = await Promise.all(
      Array.from({ length: 8 }, () =>
        new Browser(server).ask({ method: 'POST', url: '/api/sign-in/link', payload: { token } }),
      ),
    );
    expect(replies.filter(({ statusCode }) => statusCode === 200)).toHaveLength(1);
  });

  it('is replaced by the next one, and too old after seven days', async () => {
    let now = NOW;
    const class1 = await started({ now: () => now });
    const first = await linkOf(class1);
    const second = await linkOf(class1);
    const use = (token: string) =>
      new Browser(server).refusedBy(peopleRoutes.signInWithLink, { body: { token } });
    expect(await use(first)).toBe('link-refused');
    now += LINK_LASTS;
    expect(await use(second)).toBe('link-refused');
    expect(await use('')).toBe('link-refused');
  });

  it('ends when a password is set or the role is changed', async () => {
    const class1 = await started();
    const token = await linkOf(class1);
    const body = { password: 'ten potted ferns', old: PASSWORD };
    await class1.learner.browser.call(peopleRoutes.setPassword, { body });
    const use = { body: { token } };
    expect(await new Browser(server).refusedBy(peopleRoutes.signInWithLink, use)).toBe('link-refused');
  });
});

describe('a password', () => {
  it('is changed only by who knows the one before, and ends other sessions', async () => {
    const { learner } = await started();
    const second = new Browser(server);
    await second.call(peopleRoutes.signIn, { body: { signIn: 'lea.learner', password: PASSWORD } });
    const set = (body: object) => learner.browser.refusedBy(peopleRoutes.setPassword, { body });
    expect(await set({ password: 'ten potted ferns' })).toBe('sign-in-refused');
    expect(await set({ password: 'ten potted ferns', old: 'wrong' })).toBe('sign-in-refused');
    expect(await set({ password: 'short', old: PASSWORD })).toBe('bad-value');
    expect(await set({ password: 'ten potted ferns', old: PASSWORD, signIn: 'lars.learner' })).toBe(
      'name-taken',
    );
    await second.call(apiRoutes.answers);
    await learner.browser.call(peopleRoutes.setPassword, {
      body: { password: 'ten potted ferns', old: PASSWORD },
    });
    expect(await second.refusedBy(apiRoutes.answers)).toBe('sign-in-first');
    await learner.browser.call(apiRoutes.answers);
  });

  it('is chosen with a name for signing in by who has none', async () => {
    const { tutor, ownClass } = await started();
    const params = { class: ownClass.id };
    const { people } = await tutor.browser.call(peopleRoutes.addLearners, {
      params,
      body: { names: ['New One'] },
    });
    const browser = new Browser(server);
    await browser.call(peopleRoutes.signInWithLink, { body: { token: tokenOf(people[0]!.link.address) } });
    const alone = { body: { password: PASSWORD } };
    expect(await browser.refusedBy(peopleRoutes.setPassword, alone)).toBe('bad-value');
    const both = { body: { password: PASSWORD, signIn: 'new.one' } };
    expect(await browser.call(peopleRoutes.setPassword, both)).toMatchObject({
      person: { signIn: 'new.one' },
    });
  });
});

describe('where passwords would cross a network in the clear', () => {
  it('nothing is answered that has to do with people, and the state of the server is', async () => {
    const class1 = await started({ class: { behindProxy: true }, hosts: ['practice.example'] });
    const headers = { host: 'practice.example' };
    const payload = { signIn: 'lea.learner', password: PASSWORD };
    const plain = { method: 'POST', url: '/api/sign-in', payload } as const;
    await server.refused({ ...plain, headers }, 'not-secure');
    // What the proxy was told itself isn't what it says.
    await server.refused(
      { ...plain, headers: { ...headers, 'x-forwarded-proto': 'https, http' } },
      'not-secure',
    );
    await server.refused(
      { url: '/api/answers', headers: { ...headers, cookie: class1.learner.browser.cookie } },
      'not-secure',
    );
    await server.refused({ url: '/api/me', headers }, 'not-secure');
    expect((await server.ask({ url: '/api/health', headers })).statusCode).toBe(200);
    expect((await server.ask({ url: '/api/ready', headers })).statusCode).toBe(200);
    const secure = await server.ask({
      ...plain,
      headers: { ...headers, 'x-forwarded-proto': 'http, https' },
    });
    expect(secure.statusCode).toBe(200);
  });

  it('X-Forwarded-Proto of a stranger counts for nothing without a proxy', async () => {
    await started({ hosts: ['practice.example'] });
    const headers = { host: 'practice.example', 'x-forwarded-proto': 'https' };
    await server.refused({ url: '/api/me', headers }, 'not-secure');
  });

  it('it is let be where whoever runs it said so', async () => {
    await started({ class: { plainHttp: true }, hosts: ['bench.example'] });
    expect((await server.ask({ url: '/api/me', headers: { host: 'bench.example' } })).statusCode).toBe(200);
  });
});
