/** What lets somebody in is kept by nobody else: not in the log, not in the store, not in what others are told. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { peopleRoutes } from '../../shared/api-people.ts';
import { shownFirstRunKey } from '../../src/server/index.ts';
import { Browser, quickPasswords } from './class-serving.ts';
import { type Serving, serving } from './serving.ts';

const PASSWORDS = ['orchids by the window', 'orchids by the door', 'wrong orchids entirely'];
const logged: string[] = [];
const told: string[] = [];
/** Everything that lets somebody in, by name. */
const secrets: Record<string, string> = {};
let server: Serving;

/** Goes through everything that has to do with getting in, right and wrong, with every line logged. */
beforeAll(async () => {
  server = await serving({
    class: {},
    passwords: quickPasswords(),
    log: { level: 'debug', stream: { write: (line) => logged.push(line) } },
  });
  const key = (await shownFirstRunKey(server.store.people))!;
  secrets['first-run key'] = key;
  const [password, other, wrong] = PASSWORDS;
  const admin = new Browser(server);
  const body = { key, name: 'Ada', signIn: 'ada', password };
  told.push(JSON.stringify(await admin.call(peopleRoutes.firstRun, { body })));
  secrets['session of the administrator'] = admin.cookie.split('=')[1]!;
  const made = await admin.call(peopleRoutes.newClass, { body: { title: 'Flour line' } });
  secrets['joining code'] = made.joiningCode;
  const params = { class: made.id };
  const added = await admin.call(peopleRoutes.addLearners, { params, body: { names: ['Fern'] } });
  secrets['token of a link'] = /enter\/(.+)$/.exec(added.people[0]!.link.address)![1]!;
  const learner = new Browser(server);
  const token = { body: { token: secrets['token of a link'] } };
  told.push(JSON.stringify(await learner.call(peopleRoutes.signInWithLink, token)));
  secrets['session of the learner'] = learner.cookie.split('=')[1]!;
  const chosen = { body: { password: other, signIn: 'fern' } };
  told.push(JSON.stringify(await learner.call(peopleRoutes.setPassword, chosen)));
  await learner.refusedBy(peopleRoutes.setPassword, { body: { password: other, old: wrong } });
  const stranger = new Browser(server);
  await stranger.refusedBy(peopleRoutes.signIn, { body: { signIn: 'fern', password: wrong } });
  await stranger.refusedBy(peopleRoutes.signInWithLink, token);
  await stranger.refusedBy(peopleRoutes.signIn, { body: { signIn: 'fern', password: [wrong] } });
  await stranger.call(peopleRoutes.lookAtCode, { body: { code: made.joiningCode } });
  const joining = { code: made.joiningCode, name: 'Moss', signIn: 'moss', password };
  told.push(JSON.stringify(await stranger.call(peopleRoutes.join, { body: joining })));
  secrets['session of one who joined'] = stranger.cookie.split('=')[1]!;
  told.push(JSON.stringify(await stranger.call(peopleRoutes.sessions)));
  told.push(JSON.stringify(await admin.call(peopleRoutes.people)));
  await stranger.call(peopleRoutes.signOut);
  // A fault of the database in the middle of it is logged with what the database said.
  const broken = await serving({
    class: {},
    passwords: quickPasswords(),
    log: { level: 'debug', stream: { write: (line) => logged.push(line) } },
    wrap: (store) =>
      Object.assign(Object.create(store), {
        people: {
          ...store.people,
          persons: { ...store.people.persons, bySignIn: () => Promise.reject(new Error('a fault')) },
        },
      }),
  });
  await new Browser(broken).refusedBy(peopleRoutes.signIn, { body: { signIn: 'fern', password } });
  await broken.end();
});
afterAll(() => server.end());

describe('the log', () => {
  it('has every request and fault in it', () => {
    expect(logged.join('')).toContain('/api/sign-in/link');
    expect(logged.join('')).toContain('a fault');
    expect(Object.keys(secrets)).toHaveLength(6);
  });

  it('has no password, token, code, key or name in it', () => {
    const text = logged.join('');
    for (const [name, secret] of Object.entries(secrets))
      expect([name, text.includes(secret)]).toEqual([name, false]);
    for (const password of PASSWORDS) expect(text).not.toContain(password);
    expect(text).not.toMatch(/cookie|argon2|\bFern\b|\bMoss\b|"(?:ada|fern|moss)"/);
  });
});

describe('what is told', () => {
  it('has no token and no hash in it, not even one’s own', () => {
    const text = told.join('');
    for (const [name, secret] of Object.entries(secrets))
      expect([name, text.includes(secret)]).toEqual([name, false]);
    expect(text).not.toMatch(/argon2|hash/i);
  });
});

describe('the store', () => {
  it('has hashes of passwords and tokens in its files, and none of them themselves', () => {
    const files = readdirSync(server.folder).filter((name) => name.startsWith('practice.sqlite'));
    const bytes = files.map((name) => readFileSync(join(server.folder, name)));
    const isThere = (text: string): boolean => bytes.some((file) => file.includes(text));
    expect(isThere('$argon2id$v=19$')).toBe(true);
    for (const name of Object.keys(secrets))
      if (name !== 'joining code') expect([name, isThere(secrets[name]!)]).toEqual([name, false]);
    for (const password of PASSWORDS) expect(isThere(password)).toBe(false);
  });
});
