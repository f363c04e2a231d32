/** The server speaks the language that it is handed: nothing that it tells or refuses is said in another. */
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { everyRoute } from '../../shared/every-route.ts';
import type { Words } from '../../src/words/index.ts';
import { type AtWork, atWork, routes } from '../attacks/every-route.ts';
import { course } from '../homework/course.ts';
import { english } from '../support/in-english.ts';
import { madeUpLanguage, unsaid } from '../support/made-up-language.ts';
import { Browser } from './class-serving.ts';
import { type Reply, type Serving, serving } from './serving.ts';

const { speech, ...said } = english;
const words: Words = { ...madeUpLanguage(said), speech };
// Jobs are sent the language and fetch its words.
vi.mock(import('../../src/words/core.ts'), async (original) => ({
  ...(await original()),
  coreWords: async () => words,
}));

let at: AtWork;
let solo: Serving;
beforeAll(async () => {
  at = await atWork({ words });
  solo = await serving({ words });
});
afterAll(async () => {
  await at.server.end();
  await solo.end();
});

/** Where content stands, what somebody has named, and names in the interface. */
const DATA = new Set(['circuit', 'name', 'device', 'path', 'classTitle', 'wish', 'reason']);
/** Titles that the samples give, and those of the course. */
const GIVEN = new Set([
  ...['Flour line', 'Ferry ramp', 'Another title', 'Week 40', 'Nora New', 'a test'],
  ...course.bank.topics.flatMap(({ title, skills }) => [title, ...skills.map((skill) => skill.title)]),
]);
const READS = /[A-Za-z]{2,} [A-Za-z]{2,}/;

/** Texts in a value: those in places for data, or the others. */
function textsIn(value: unknown, data: boolean, isData = false): readonly string[] {
  if (typeof value === 'string') return isData === data ? [value] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, each]) => textsIn(each, data, isData || DATA.has(name)));
}

/** Sentences in a reply that didn't come out of the catalogue. */
function plainIn(reply: Reply): readonly string[] {
  if (!/json/.test(String(reply.headers['content-type']))) return [];
  const value: unknown = reply.json();
  // What is written at a device is told as it is.
  const content = new Set(textsIn(value, true));
  return textsIn(value, false).filter(
    (text) => !GIVEN.has(text) && !content.has(text) && READS.test(unsaid(text)),
  );
}

function expectRefused(reply: Reply): void {
  const told = reply.json() as { code: string; message: string; hint: string };
  expect(reply.statusCode, told.code).toBeGreaterThanOrEqual(400);
  for (const text of [told.message, told.hint]) {
    expect(text).toMatch(/^⟦/);
    expect(unsaid(text).trim(), told.code).toBe('');
  }
}

/** What these give is content, or is written in English for whoever writes programs. */
const CONTENT = new Set(['bank', 'description', 'exportLearner', 'exportPerson']);
const told = routes.filter(([name]) => !CONTENT.has(name));

describe('in another language', () => {
  it.each(told.filter(([, { role }]) => role !== 'nobody'))(
    '%s refuses who has not signed in, and who may not',
    async (name, route) => {
      expectRefused(await new Browser(at.server).ask(at.request([name, route])));
      if (route.role === 'learner') return;
      const learner = await at.browserFor(everyRoute.recalls);
      expectRefused(await learner.ask(at.request([name, route])));
    },
  );

  it.each(told.filter(([, { body }]) => body))('%s refuses what is not of its form', async (name, route) => {
    const browser = await at.browserFor(route);
    const request = at.request([name, route]);
    expectRefused(await browser.ask({ ...request, payload: [] }));
    const headers = { 'content-type': 'application/json' };
    expectRefused(await browser.ask({ ...request, payload: '{', headers }));
    expectRefused(await browser.ask({ ...request, payload: '', headers }));
    expectRefused(await browser.ask({ ...request, payload: 'a', headers: { 'content-type': 'text/plain' } }));
  });

  it.each(told)('%s tells nothing in English', async (name, route) => {
    const browser = await at.browserFor(route);
    const reply = await browser.ask(at.request([name, route]));
    if (reply.statusCode >= 400) expectRefused(reply);
    expect(plainIn(reply)).toEqual([]);
  });

  it('refuses what is not there, and from where nobody may ask', async () => {
    expectRefused(await solo.ask({ url: '/api/nothing' }));
    expectRefused(await solo.ask({ method: 'PUT', url: '/api/health' }));
    expectRefused(await solo.ask({ url: '/api/classes' }));
    expectRefused(await solo.ask({ url: '/api/health', headers: { host: 'evil.example' } }));
    expectRefused(await solo.ask({ url: '/api/health', headers: { origin: 'https://evil.example' } }));
    expectRefused(await solo.ask({ url: '/api/answers?after=x' }));
    expectRefused(await solo.ask({ url: '/%zz' }));
  });

  it('refuses single answers', async () => {
    const results = await solo.send([{}, 1, { id: 'a', question: 'b' }]);
    for (const result of results) {
      expect(result.result).toBe('refused');
      expect(
        result.result === 'refused' && unsaid(Object.values(result.problem).slice(1).join('')).trim(),
      ).toBe('');
    }
  });

  it('says in the place of the page that it has not been built', async () => {
    const { body } = await solo.ask({ url: '/', headers: { accept: 'text/html' } });
    const shown = body.replace(/<!doctype html>|<meta[^>]*>|<\/?(?:html|title|h1|p|code)[^>]*>/g, '');
    expect(body).toContain('⟦');
    expect(unsaid(shown).trim()).toBe('');
  });

  it('refuses what is no request at all', async () => {
    await solo.app.listen({ host: '127.0.0.1', port: 0 });
    const address = solo.app.server.address();
    if (typeof address !== 'object' || !address) throw new Error('It listens nowhere.');
    const reply = await new Promise<string>((resolve, reject) => {
      const socket = connect(address.port, '127.0.0.1', () => socket.write('this is no HTTP\r\n\r\n'));
      let text = '';
      socket.on('data', (piece) => {
        text += piece;
      });
      socket.on('end', () => resolve(text));
      socket.on('error', reject);
    });
    const { message, hint } = JSON.parse(reply.split('\r\n\r\n')[1]!);
    for (const text of [message, hint]) {
      expect(text).toMatch(/^⟦/);
      expect(unsaid(text).trim()).toBe('');
    }
  });
});
