/** What the page knows of its learner, and when it sends, fetches, waits and erases. The server is a small one, here. */
import 'fake-indexeddb/auto';
import './support/words.ts';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { AnswerLine, AnswerRecord } from '../../shared/practice.ts';
import type { Settings } from '../../shared/settings.ts';
import { newRecall, review } from '../../src/memory/index.ts';
import { lineOf } from '../../src/practice/line.ts';
import {
  answered,
  answers,
  coming,
  connection,
  type Fresh,
  gone,
  Learner,
  settings,
  waiting,
} from '../../src/web/learner.ts';
import { type Ahead, Local } from '../../src/web/local/database.ts';
import { me } from '../../src/web/me.ts';
import { renewed } from '../../src/web/renewed.ts';
import { answerWith, MORNING } from '../support/answers.ts';

const SECOND = 1000;
const NOW = MORNING + 5_000_000;
const UNSET: Settings = {
  changedAt: 0,
  assessmentAt: null,
  minutesADay: null,
  newSkillsADay: null,
  placement: null,
};
const given = (id: string, minute = 1): AnswerRecord =>
  answerWith({ id, learner: 'fern', at: MORNING + minute * 60_000 });
const line = (id: string, number: number, minute = 1): AnswerLine => ({
  ...lineOf(given(id, minute)),
  number,
});
const AHEAD: Ahead = {
  history: 'history-1',
  last: 7,
  recalls: {
    'make-contact': review(newRecall(), { grade: 'firm', at: MORNING, circuit: 'c1', share: 1, ratio: 5 }),
  },
};

/** What the server has, how it replies, and what it was asked. */
let there: { lines: AnswerLine[]; settings: Settings; ahead: Ahead; history: string };
let broken: (path: string) => Response | undefined;
let asked: { path: string; method: string; person: string | null }[];

async function serve(input: RequestInfo | URL, init: RequestInit = {}): Promise<Response> {
  const path = String(input);
  const method = init.method ?? 'GET';
  asked.push({ path, method, person: new Headers(init.headers).get('polewise-person') });
  const failing = broken(path);
  if (failing) return failing;
  const reply = (value: unknown) => new Response(JSON.stringify(value));
  if (path.startsWith('/api/settings')) {
    if (method === 'PUT') there.settings = JSON.parse(String(init.body)) as Settings;
    return reply(there.settings);
  }
  if (path === '/api/recalls') return reply(there.ahead);
  if (path === '/api/answers' && method === 'POST') {
    const sent = (JSON.parse(String(init.body)) as { answers: AnswerRecord[] }).answers;
    return reply({
      results: sent.map((answer) => {
        const number = there.lines.length + 1;
        there.lines.push({ ...lineOf(answer), number });
        return { id: answer.id, result: 'kept', number };
      }),
    });
  }
  if (path.startsWith('/api/lines')) {
    const after = Number(/after=(\d+)/.exec(path)![1]);
    const lines = there.lines.filter(({ number }) => number! > after);
    return reply({ history: there.history, last: there.lines.length, corrections: 0, lines });
  }
  if (path.startsWith('/api/answers'))
    return reply({ history: there.history, last: there.lines.length, answers: [] });
  if (path.startsWith('/api/learner')) return reply({ answers: there.lines.length });
  return new Response('{}', { status: 404 });
}

const opened: { local: Local; learner: Learner }[] = [];
let names = 0;
const told: Fresh[] = [];

/** A page that has this store open; what it tells its engine is in `told`. */
async function page(name = `learner-${++names}`): Promise<{ local: Local; learner: Learner; name: string }> {
  const local = await Local.open(name);
  const learner = new Learner(local, 'fern', async (fresh) => {
    told.push(fresh);
  });
  opened.push({ local, learner });
  return { local, learner, name };
}
const posts = () => asked.filter(({ method }) => method === 'POST').length;
const exchanges = () => asked.filter(({ path }) => path === '/api/settings').length;
/** Waits until sending and fetching is over that has begun, and says how it went. */
async function over(): Promise<typeof connection.value> {
  await vi.waitFor(() => expect(connection.value).not.toBe('unknown'));
  const { value } = connection;
  connection.value = 'unknown';
  return value;
}

beforeEach(() => {
  there = {
    lines: [],
    settings: UNSET,
    ahead: { history: 'history-1', last: 0, recalls: {} },
    history: 'history-1',
  };
  broken = () => undefined;
  asked = [];
  told.length = 0;
  [answers.value, waiting.value, gone.value, connection.value] = [[], 0, 0, 'unknown'];
  [settings.value, coming.value, renewed.value] = [UNSET, null, undefined];
  vi.stubGlobal('fetch', serve);
  vi.stubGlobal('navigator', { onLine: true });
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'Date'], now: NOW });
});
afterEach(async () => {
  vi.useRealTimers();
  for (const { local, learner } of opened.splice(0)) {
    await learner.end();
    local.close();
  }
  vi.unstubAllGlobals();
});

describe('what is on the device', () => {
  it('is read in the order of its time, and the engine is told of it', async () => {
    const { local, learner } = await page();
    await local.keep(given('late', 9));
    await local.keep(given('early', 1));
    await local.setValue('settings', { ...UNSET, minutesADay: 20, changedAt: 5 });
    await learner.load();
    expect(answers.value.map(({ id }) => id)).toEqual(['early', 'late']);
    expect([waiting.value, answered.value]).toEqual([2, 2]);
    expect(settings.value).toEqual({ ...UNSET, minutesADay: 20, changedAt: 5 });
    expect(told).toEqual([{ answers: answers.value, ahead: null }]);
  });

  it('counts the answers that are still on their way from elsewhere', async () => {
    const { local, learner } = await page();
    await local.setValue('ahead', AHEAD);
    await learner.load();
    expect(answered.value).toBe(7);
    expect(told).toEqual([{ answers: [], ahead: AHEAD }]);
    expect(settings.value).toEqual(UNSET);
  });

  it('goes where the page was left in the middle of erasing it', async () => {
    const { local, learner } = await page();
    await local.keep(given('one'));
    await local.setValue('erasing', true);
    await learner.load();
    expect(answers.value).toEqual([]);
    expect(await local.value('erasing')).toBeUndefined();
  });
});

describe('an answer', () => {
  it('is on the device and told of at once, and then at the server', async () => {
    const { local, learner } = await page();
    await learner.load();
    broken = () => new Response('', { status: 503 });
    await learner.keep(given('one'));
    expect(answers.value.map(({ id }) => id)).toEqual(['one']);
    expect(waiting.value).toBe(1);
    expect(told.at(-1)).toEqual({ answers: [lineOf(given('one'))] });
    expect(await over()).toBe('offline');
    broken = () => undefined;
    learner.sync();
    expect(await over()).toBe('done');
    expect([waiting.value, there.lines.length]).toEqual([0, 1]);
    expect(await local.waiting()).toBe(0);
  });

  it('that is kept again is told of once', async () => {
    const { learner } = await page();
    await learner.load();
    for (const id of ['one', 'two', 'one']) await learner.keep(given(id));
    expect(told.slice(1).filter(({ answers }) => answers.some(({ number }) => number === null))).toHaveLength(
      2,
    );
    expect(answers.value).toHaveLength(2);
  });

  it('stands by its time among those from elsewhere, as the server counts it', async () => {
    there.lines = [line('early', 1, 1), line('late', 2, 9)];
    const { learner } = await page();
    await learner.load();
    await learner.keep(given('between', 5));
    expect(await over()).toBe('done');
    expect(answers.value.map(({ id, number }) => [id, number])).toEqual([
      ['early', 1],
      ['between', 3],
      ['late', 2],
    ]);
  });

  it('is asked for and sent in its learner’s name', async () => {
    const { learner } = await page();
    await learner.keep(given('one'));
    await over();
    expect(new Set(asked.map(({ person }) => person))).toEqual(new Set(['fern']));
  });

  it('given while others are on their way goes right after them', async () => {
    const { learner } = await page();
    let go = (): void => undefined;
    const first = new Promise<void>((resolve) => {
      go = resolve;
    });
    let held = true;
    vi.stubGlobal('fetch', async (input: RequestInfo, init?: RequestInit) => {
      if (held) await first;
      return serve(input, init);
    });
    await learner.keep(given('one'));
    await learner.keep(given('two'));
    await learner.keep(given('three'));
    held = false;
    go();
    await vi.waitFor(() => expect(there.lines.map(({ id }) => id)).toEqual(['one', 'two', 'three']));
    await vi.waitFor(() => expect(exchanges()).toBe(2));
    await learner.end();
    expect(exchanges()).toBe(2);
  });
});

describe('trying again', () => {
  it('comes after four seconds, then twice as long each time, at most five minutes, and begins again when it went', async () => {
    broken = () => new Response('', { status: 503 });
    const { learner } = await page();
    learner.sync();
    expect(await over()).toBe('offline');
    for (const seconds of [4, 8, 16, 32, 64, 128, 256, 300, 300]) {
      const before = asked.length;
      await vi.advanceTimersByTimeAsync(seconds * SECOND - 1);
      expect(asked.length).toBe(before);
      await vi.advanceTimersByTimeAsync(1);
      expect(await over()).toBe('offline');
    }
    broken = () => undefined;
    await vi.advanceTimersByTimeAsync(300 * SECOND);
    expect(await over()).toBe('done');
    const quiet = asked.length;
    await vi.advanceTimersByTimeAsync(3000 * SECOND);
    expect(asked.length).toBe(quiet);
    broken = () => new Response('', { status: 503 });
    learner.sync();
    expect(await over()).toBe('offline');
    await vi.advanceTimersByTimeAsync(4 * SECOND);
    expect(await over()).toBe('offline');
  });

  it('is over when the learner goes', async () => {
    broken = () => new Response('', { status: 503 });
    const { learner } = await page();
    learner.sync();
    await over();
    await learner.end();
    const quiet = asked.length;
    learner.sync();
    await vi.advanceTimersByTimeAsync(3000 * SECOND);
    expect(asked.length).toBe(quiet);
  });

  it('says where the device keeps nothing, and what waited is known on', async () => {
    const { local, learner } = await page();
    waiting.value = 3;
    vi.spyOn(local, 'waiting').mockRejectedValue(new Error('closed'));
    const full = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(() => {
      throw new DOMException('full', 'QuotaExceededError');
    });
    learner.sync();
    expect(await over()).toBe('unkept');
    expect(waiting.value).toBe(3);
    full.mockRestore();
  });

  it('says where the server is another one than this page’s', async () => {
    vi.stubGlobal('document', { querySelector: () => ({ getAttribute: () => '/old.js' }) });
    broken = (path) =>
      path === '/api/settings'
        ? new Response('{"changedAt":"some day"}', { headers: { 'polewise-page': '/new.js' } })
        : undefined;
    const { learner } = await page();
    learner.sync();
    expect(await over()).toBe('too-old');
    expect(renewed.value).toBe('too-old');
  });

  it('is not a matter of the page where nobody answers', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no network')));
    const { learner } = await page();
    learner.sync();
    expect(await over()).toBe('offline');
    expect(renewed.value).toBeUndefined();
  });
});

describe('a page in step with its server', () => {
  it('exchanges at once, when the network is back, and when it is looked at again', async () => {
    const [document, frame] = [
      new EventTarget() as EventTarget & { visibilityState?: string },
      new EventTarget(),
    ];
    vi.stubGlobal('document', document);
    vi.stubGlobal('addEventListener', frame.addEventListener.bind(frame));
    const { learner } = await page();
    learner.keepInStep();
    expect(await over()).toBe('done');
    frame.dispatchEvent(new Event('online'));
    expect(await over()).toBe('done');
    document.visibilityState = 'visible';
    document.dispatchEvent(new Event('visibilitychange'));
    expect(await over()).toBe('done');
    const quiet = asked.length;
    document.visibilityState = 'hidden';
    document.dispatchEvent(new Event('visibilitychange'));
    await learner.end();
    expect(asked.length).toBe(quiet);
  });

  it('tells of a history that isn’t the one known here as anew', async () => {
    there.lines = [line('old', 1)];
    const { learner } = await page();
    learner.sync();
    await over();
    expect(answers.value.map(({ id }) => id)).toEqual(['old']);
    there = { ...there, history: 'history-2', lines: [] };
    learner.sync();
    expect(await over()).toBe('done');
    expect(told.find(({ anew }) => anew)).toEqual({ answers: [], anew: true });
    expect(answers.value).toEqual([]);
  });

  it('takes what was set elsewhere, and sends what is changed here', async () => {
    there.settings = { ...UNSET, minutesADay: 25, changedAt: 50 };
    const { local, learner } = await page();
    learner.sync();
    await over();
    expect(settings.value.minutesADay).toBe(25);
    await learner.change({ newSkillsADay: 2 });
    expect(settings.value).toMatchObject({ minutesADay: 25, newSkillsADay: 2 });
    expect(settings.value.changedAt).toBeGreaterThanOrEqual(NOW);
    await over();
    expect(there.settings).toEqual(settings.value);
    expect(await local.value('settings')).toEqual(settings.value);
  });

  it('says what is still on its way where that takes more than one page, and no longer when it is here', async () => {
    const seen: unknown[] = [];
    const stop = coming.subscribe((how) => seen.push(how));
    there.lines = Array.from({ length: 3 }, (_, at) => line(`a${at}`, at + 1, at));
    broken = (path) =>
      path.startsWith('/api/lines?after=0')
        ? new Response(
            JSON.stringify({ history: 'history-1', last: 3, corrections: 0, lines: there.lines.slice(0, 2) }),
          )
        : undefined;
    const { learner } = await page();
    learner.sync();
    expect(await over()).toBe('done');
    expect(seen).toEqual([null, { what: 'lines', here: 2, all: 3 }, null]);
    expect(answers.value).toHaveLength(3);
    stop();
  });
});

describe('somebody who is new on a device', () => {
  it('is asked for, how they stand and what they set, before the first question', async () => {
    there.ahead = AHEAD;
    there.settings = { ...UNSET, minutesADay: 25, changedAt: 50 };
    const { local, learner } = await page();
    await learner.load();
    await learner.catchUp(1000);
    expect(asked.map(({ path }) => path).toSorted()).toEqual(['/api/recalls', '/api/settings']);
    expect([settings.value.minutesADay, answered.value]).toEqual([25, 7]);
    expect(told.at(-1)).toEqual({ answers: [], ahead: AHEAD });
    expect([await local.value('ahead'), (await local.value('settings'))?.minutesADay]).toEqual([AHEAD, 25]);
  });

  it('begins as a beginner where the server knows nothing, refuses, or is not reached', async () => {
    for (const reply of [
      undefined,
      () => new Response('{}', { status: 500 }),
      () => new Response(JSON.stringify({ ...AHEAD, changedAt: 50, minutesADay: 25 }), { status: 401 }),
      () => new Response('a page of some network'),
    ]) {
      if (reply) broken = reply;
      const { local, learner } = await page();
      await learner.load();
      await learner.catchUp(1000);
      expect([settings.value, answered.value]).toEqual([UNSET, 0]);
      expect([await local.value('ahead'), await local.value('settings')]).toEqual([undefined, undefined]);
    }
  });

  it('isn’t waited for without network, nor where anything is known already', async () => {
    const fresh = await page();
    await fresh.learner.load();
    vi.stubGlobal('navigator', { onLine: false });
    expect(fresh.learner.catchUp(1000)).toBeUndefined();
    vi.stubGlobal('navigator', { onLine: true });
    for (const known of [
      (local: Local) => local.keep(given('one')),
      (local: Local) => local.setValue('ahead', AHEAD),
      (local: Local) => local.setValue('fetched', { history: null, last: 0 }),
      (local: Local) => local.setValue('lines', { history: null, last: 0, corrections: 0 }),
    ]) {
      const { local, learner } = await page();
      await known(local);
      await learner.load();
      expect(learner.catchUp(1000)).toBeUndefined();
    }
    expect(asked).toEqual([]);
  });

  it('is waited for only so long', async () => {
    const patience = new AbortController();
    const timeout = vi.spyOn(AbortSignal, 'timeout').mockReturnValue(patience.signal);
    vi.stubGlobal(
      'fetch',
      (_: RequestInfo, { signal }: RequestInit) =>
        new Promise((_resolve, reject) => signal!.addEventListener('abort', () => reject(signal!.reason))),
    );
    const { learner } = await page();
    await learner.load();
    const waited = learner.catchUp(1234);
    expect(timeout).toHaveBeenCalledWith(1234);
    patience.abort();
    await waited;
    expect(answered.value).toBe(0);
    timeout.mockRestore();
  });
});

describe('erasing', () => {
  const filled = async () => {
    const made = await page();
    await made.local.keep(given('one'));
    await made.local.setValue('bank', { etag: null, bank: { topics: [] } });
    await made.learner.load();
    return made;
  };

  it('takes everything from the server and then from the device, but for the questions', async () => {
    const { local, learner } = await filled();
    await learner.erase();
    expect(asked).toEqual([{ path: '/api/learner?confirm=fern', method: 'DELETE', person: 'fern' }]);
    expect([await local.lines(), await local.waiting(), await local.value('erasing')]).toEqual([
      [],
      0,
      undefined,
    ]);
    expect(await local.value('bank')).toEqual({ etag: null, bank: { topics: [] } });
    // Nothing more is sent or fetched by this page.
    learner.sync();
    expect(asked).toHaveLength(1);
  });

  it('leaves everything where the server does not, says why, and goes on', async () => {
    const { local, learner } = await filled();
    broken = (path) => (path.startsWith('/api/learner') ? new Response('{}', { status: 503 }) : undefined);
    await expect(learner.erase()).rejects.toThrow(/\S/);
    expect(await local.lines()).toHaveLength(1);
    expect(await local.value('erasing')).toBeUndefined();
    expect(await over()).toBe('done');
    expect(there.lines).toHaveLength(1);
  });

  it('is remembered on the device from before the server is asked', async () => {
    const { local, learner } = await filled();
    let then: unknown;
    vi.stubGlobal('fetch', async (input: RequestInfo, init?: RequestInit) => {
      then = await local.value('erasing');
      return serve(input, init);
    });
    await learner.erase();
    expect(then).toBe(true);
  });

  it('waits in a class until homework has arrived', async () => {
    const { local, learner } = await filled();
    me.value = { mode: 'class', person: null, firstRun: false };
    const { KeptHomework } = await import('../../src/web/local/homework/kept-homework.ts');
    const { outboxOf } = await import('../../src/web/local/homework/own-outbox.ts');
    const [document, frame] = [new EventTarget(), new EventTarget()];
    vi.stubGlobal('document', document);
    vi.stubGlobal('addEventListener', frame.addEventListener.bind(frame));
    const kept = await KeptHomework.open();
    const answer = { kind: 'lamp-states' as const, states: { '-H1': 'lit' as const } };
    await kept.give({ person: 'fern', paper: 'p', id: 's', item: 0, answer, chosen: [], secondsUsed: 1 });
    await expect(learner.erase()).rejects.toThrow(/\S/);
    expect(asked.some(({ method }) => method === 'DELETE')).toBe(false);
    expect(await local.lines()).toHaveLength(1);
    const [first] = await kept.waitingOf('fern');
    await kept.refuse([first!.key], []);
    await kept.keepList('fern', []);
    await learner.erase();
    expect(await local.lines()).toEqual([]);
    expect(await kept.list('fern')).toBeUndefined();
    kept.close();
    (await outboxOf('fern')).kept.close();
    me.value = { mode: 'solo', person: null, firstRun: false };
  });
});

describe('a store that the browser throws away', () => {
  it('gets back what was set, and what waits is sent', async () => {
    const { local, learner, name } = await page();
    await learner.load();
    await local.keep(given('one'));
    settings.value = { ...UNSET, minutesADay: 20, changedAt: 5 };
    await new Promise((resolve, reject) => {
      const request = indexedDB.deleteDatabase(name);
      request.onsuccess = resolve;
      request.onerror = reject;
    });
    await local.setValue('theme', 'dark');
    expect(await over()).toBe('done');
    expect(there.lines.map(({ id }) => id)).toEqual(['one']);
    expect(await local.value('settings')).toMatchObject({ minutesADay: 20 });
    expect(posts()).toBe(1);
  });
});
