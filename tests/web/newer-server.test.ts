/** A server that is newer than the page: what is new in its replies is passed over, and what doesn't fit is told as that. */
import 'fake-indexeddb/auto';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { z } from 'zod';
import { answerPage } from '../../shared/api.ts';
import { question } from '../../shared/question.ts';
import { lineOf } from '../../src/practice/index.ts';
import { Local } from '../../src/web/local/database.ts';
import { firstMissing } from '../../src/web/local/exchange.ts';
import { type Fetch, synchronise } from '../../src/web/local/sync.ts';
import { readLoosely } from '../../src/web/loosely.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { nobody } from './nobody.ts';

const given = (id: string, minute = 1) => answerWith({ id, learner: 'me', at: MORNING + minute * 60_000 });
const SETTINGS = {
  changedAt: 0,
  assessmentAt: null,
  minutesADay: null,
  newSkillsADay: null,
  placement: null,
};

let names = 0;
let local: Local;
beforeEach(async () => {
  local = await Local.open(`newer-${++names}`);
  // As the page that is open: another build than the server's.
  vi.stubGlobal('document', { querySelector: () => ({ getAttribute: () => '/assets/index-old.js' }) });
});
afterEach(() => {
  local.close();
  vi.unstubAllGlobals();
});

type Said = (path: string, method: string) => { status?: number; body: unknown };

/** A server that has this build of the page. */
const server =
  (said: Said, build = '/assets/index-new.js'): Fetch =>
  async (path, { method = 'GET' } = {}) => {
    const { status = 200, body } = said(path, method);
    return new Response(JSON.stringify(body), { status, headers: { 'polewise-page': build } });
  };

/** Everything in order, and in everything a field that this page has never heard of. */
const talkative: Said = (path, method) => {
  const more = { mood: 'cheerful' };
  if (path === '/api/settings') return { body: { ...SETTINGS, ...more } };
  if (method === 'POST')
    return { body: { ...more, results: [{ ...more, result: 'kept', id: 'mine', number: 2 }] } };
  const theirs = given('theirs', 2);
  if (path.startsWith('/api/lines')) {
    const lines = [theirs, given('mine')].map((record, at) => ({
      ...lineOf(record),
      number: at + 1,
      ...more,
    }));
    return { body: { ...more, history: 'history', last: 2, corrections: 0, lines } };
  }
  const answer = {
    ...theirs,
    ...more,
    mark: { ...theirs.mark, ...more, parts: theirs.mark.parts.map((part) => ({ ...part, ...more })) },
  };
  const entry = { kind: 'answer', number: 1, arrivedAt: MORNING, answer, correctedMark: null, ...more };
  return { body: { ...more, history: 'history', last: 2, answers: [entry] } };
};

describe('a reply with fields that the page does not know', () => {
  it('is read for what it knows: everything is sent, fetched and set', async () => {
    await local.keep(given('mine'));
    expect(await synchronise(local, server(talkative), nobody)).toBe('done');
    expect(await local.waiting()).toBe(0);
    expect((await local.lines()).map(({ id, number }) => [id, number])).toEqual([
      ['mine', 2],
      ['theirs', 1],
    ]);
    expect(await firstMissing(local, 0)).toBeUndefined();
    expect(await local.value('settings')).toEqual(SETTINGS);
  });

  it('loses those fields and nothing else, however deep they stand, in unions too', () => {
    const plain = given('one').question;
    const told = { ...plain, circuit: { ...plain.circuit, drawnBy: 'hand' }, urgency: [1, 2] };
    expect(readLoosely(question, told)).toEqual(question.parse(plain));
    const either = z.union([z.strictObject({ lit: z.boolean() }), z.strictObject({ level: z.number() })]);
    const list = z.array(z.strictObject({ state: either }));
    expect(readLoosely(list, [{ state: { level: 1, unit: 'V' }, since: 3 }])).toEqual([
      { state: { level: 1 } },
    ]);
  });

  it('is still refused where something that is wanted is missing or wrong', () => {
    const page = { history: null, last: -1, answers: [], more: 1 };
    expect(readLoosely(answerPage, page)).toBeUndefined();
    expect(readLoosely(answerPage, { history: null, answers: [] })).toBeUndefined();
    expect(readLoosely(answerPage, 'all of them')).toBeUndefined();
  });
});

describe('a reply that does not fit', () => {
  const strange: Said = (path) =>
    path === '/api/settings' ? { body: SETTINGS } : { body: { results: 'all', answers: 'many' } };

  it('means that the page is too old where the server has another page; what waits goes on waiting', async () => {
    await local.keep(given('mine'));
    expect(await synchronise(local, server(strange), nobody)).toBe('too-old');
    expect(await local.waiting()).toBe(1);
  });

  it('is no more than a network to be tried again where the server has this very page', async () => {
    await local.keep(given('mine'));
    expect(await synchronise(local, server(strange, '/assets/index-old.js'), nobody)).toBe('offline');
    expect(await local.waiting()).toBe(1);
  });

  it('keeps an answer in line that a newer server wants in another form', async () => {
    await local.keep(given('mine'));
    const problem = { code: 'bad-answer', message: 'It has no mood.', hint: '' };
    const picky: Said = () => ({ body: { results: [{ result: 'refused', id: 'mine', problem }] } });
    expect(await synchronise(local, server(picky), nobody)).toBe('too-old');
    const closed: Said = () => ({ status: 400, body: { ...problem, code: 'bad-value' } });
    expect(await synchronise(local, server(closed), nobody)).toBe('too-old');
    expect(await local.waiting()).toBe(1);
  });
});
