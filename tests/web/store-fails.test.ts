/** A device's store that is full, closed or thrown away: no answer is lost by it, and what is gone is told as gone. */
import 'fake-indexeddb/auto';
import './support/words.ts';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Answer } from '../../shared/question.ts';
import type { Engine } from '../../src/web/engine/client.ts';
import { gone, Learner, waiting } from '../../src/web/learner.ts';
import { Local } from '../../src/web/local/database.ts';
import { inLine } from '../../src/web/local/exchange.ts';
import { KeptHomework } from '../../src/web/local/homework/kept-homework.ts';
import { Outbox } from '../../src/web/local/homework/outbox.ts';
import { Session } from '../../src/web/screens/practise/session.ts';
import type { Ground } from '../../src/web/start.ts';
import { answerWith, MORNING } from '../support/answers.ts';

const given = (id: string, minute = 1) => answerWith({ id, learner: 'me', at: MORNING + minute * 60_000 });

let names = 0;
const fresh = (): string => `failing-${++names}`;

const ask = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

/** As when space is short, or somebody clears the site's data: who has it open is told to let go, and it is gone. */
const throwAway = (name: string): Promise<unknown> => ask(indexedDB.deleteDatabase(name));

/** From now on nothing more fits. */
function fill(): void {
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('full', 'QuotaExceededError');
  });
  vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(() => {
    throw new DOMException('full', 'QuotaExceededError');
  });
}

afterEach(() => {
  vi.restoreAllMocks();
  gone.value = 0;
  waiting.value = 0;
});

describe('a store of answers', () => {
  it('that was closed is opened again, and keeps what it is given', async () => {
    const name = fresh();
    const local = await Local.open(name);
    await local.keep(given('before'));
    // The browser closes a connection without asking; the page hears of it only by what fails.
    const close = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementationOnce(() => {
      throw new DOMException('closing', 'InvalidStateError');
    });
    await local.keep(given('after', 2));
    expect(close).toHaveBeenCalled();
    expect((await local.lines()).map(({ id }) => id)).toEqual(['before', 'after']);
    local.close();
  });

  it('that is full says so in plain words, and keeps the answer once there is room', async () => {
    const local = await Local.open(fresh());
    fill();
    await expect(local.keep(given('answer'))).rejects.toThrow(
      'There is no room left on this device: something else on it has to go.',
    );
    vi.restoreAllMocks();
    expect(await local.waiting()).toBe(0);
    await local.keep(given('answer'));
    expect(await local.waiting()).toBe(1);
    local.close();
  });

  it('that was thrown away gets back what was given since the page was opened', async () => {
    const name = fresh();
    const local = await Local.open(name);
    await local.keep(given('one', 1));
    await local.keep(given('two', 2));
    await throwAway(name);
    await local.keep(given('three', 3));
    expect((await inLine(local, 10)).map(({ answer }) => answer.id)).toEqual(['one', 'two', 'three']);
    local.close();
  });

  it('tells of answers that wait and are not there as gone, and holds up none for them', async () => {
    const name = fresh();
    const local = await Local.open(name);
    const told: number[] = [];
    local.whenGone = (count) => told.push(count);
    for (const minute of [1, 2, 3]) await local.keep(given(`answer-${minute}`, minute));
    const other = await ask(indexedDB.open(name));
    const kept = other.transaction('answers', 'readwrite').objectStore('answers');
    await Promise.all([ask(kept.delete('answer-1')), ask(kept.delete('answer-2'))]);
    other.close();
    expect((await inLine(local, 2)).map(({ answer }) => answer.id)).toEqual(['answer-3']);
    expect(told).toEqual([2]);
    expect(await local.waiting()).toBe(1);
    local.close();
  });
});

describe('answers that were thrown away while they waited', () => {
  it('are told as gone, not as waiting; those of this sitting are not lost', async () => {
    vi.stubGlobal('fetch', () => Promise.reject(new TypeError('no network')));
    const name = fresh();
    const yesterday = await Local.open(name);
    for (const minute of [1, 2]) await yesterday.keep(given(`yesterday-${minute}`, minute));
    yesterday.close();
    const local = await Local.open(name);
    const learner = new Learner(local, 'me', async () => undefined);
    await learner.load();
    await learner.keep(given('today', 3));
    expect([waiting.value, gone.value]).toEqual([3, 0]);
    await throwAway(name);
    await local.setValue('theme', 'dark');
    expect([waiting.value, gone.value]).toEqual([1, 2]);
    expect((await inLine(local, 10)).map(({ answer }) => answer.id)).toEqual(['today']);
    await learner.end();
    vi.unstubAllGlobals();
    local.close();
  });
});

describe('a question of practice', () => {
  const answer: Answer = { kind: 'lamp-states', states: { '-H1': 'lit', '-H2': 'dark' } };

  /** Practice with everything real but the engine, which asks one question and marks what it is told to mark. */
  async function practising() {
    const local = await Local.open(fresh());
    const kept = given('any');
    const task = {
      skill: kept.skill,
      circuit: kept.circuit,
      question: kept.question,
      because: { kind: 'new', skill: kept.skill },
    };
    const judged: unknown[] = [];
    const call = async (name: string, take: { given?: { id: string; answer: Answer; at: number } }) => {
      switch (name) {
        case 'next':
          return { task, asked: { items: [] }, drawn: { sheets: [] }, skillTitle: 'Changeover' };
        case 'judge':
          judged.push(take.given);
          return {
            mark: { ...kept.mark, explanation: [] },
            judged: { mark: kept.mark, record: { ...kept, id: take.given?.id, answer: take.given?.answer } },
            circuit: kept.question.circuit,
          };
        default:
          return new Promise(() => undefined);
      }
    };
    const learner = new Learner(local, 'me', async () => undefined);
    vi.spyOn(learner, 'sync').mockImplementation(() => undefined);
    const ground = { local, learner, engine: { call } as unknown as Engine } as unknown as Ground;
    const session = new Session(ground, () => ({ width: 'phone', theme: 'light' }));
    await session.begin();
    session.chooseAll([
      ['-H1', 'lit'],
      ['-H2', 'dark'],
    ]);
    return { session, local, judged };
  }

  it('stays with its choices and its answer where the answer can not be kept, and the same is tried again', async () => {
    const { session, local, judged } = await practising();
    fill();
    await session.check(answer);
    const phase = session.phase.value;
    expect(phase).toMatchObject({
      kind: 'asking',
      unkept: {
        given: { answer },
        why: 'There is no room left on this device: something else on it has to go.',
      },
    });
    // What is being kept isn't another answer by a slip of the finger.
    session.choose('-H1', 'dark');
    expect([...session.chosen.value]).toEqual([
      ['-H1', 'lit'],
      ['-H2', 'dark'],
    ]);
    await session.check(answer);
    expect(session.phase.value).toMatchObject({
      kind: 'asking',
      unkept: phase.kind === 'asking' ? phase.unkept : {},
    });
    vi.restoreAllMocks();
    await session.check(answer);
    expect(session.phase.value.kind).toBe('marked');
    const line = await inLine(local, 10);
    expect(line.map(({ answer: { id } }) => id)).toEqual([
      phase.kind === 'asking' ? phase.unkept?.given.id : undefined,
    ]);
    expect(new Set(judged).size).toBe(1);
    local.close();
  });

  it('is put and can be answered where the store fails only while it is put', async () => {
    const { session, local } = await practising();
    fill();
    await session.next();
    expect(session.phase.value.kind).toBe('asking');
    vi.restoreAllMocks();
    await session.check(answer);
    expect(session.phase.value.kind).toBe('marked');
    local.close();
  });
});

describe('answers on a paper', () => {
  const onPaper = (id: string, item: number) => ({
    paper: 'paper-1',
    id,
    item,
    answer: { kind: 'lamp-states' as const, states: { '-H1': 'lit' as const } },
    chosen: [['-H1', 'lit']] as const,
    secondsUsed: 3,
  });

  it('are tried again under the same id where the store did not take them, and say so meanwhile', async () => {
    const kept = await KeptHomework.open(fresh());
    const sent: string[] = [];
    const outbox = new Outbox(kept, 'fern', async (_paper, { answers }) => {
      sent.push(...answers.map(({ id }) => id));
      return {
        kind: 'results',
        results: { now: 1, results: answers.map(({ id }) => ({ result: 'kept', id, number: 1 })) },
      };
    });
    fill();
    await outbox.give(onPaper('save-1', 0));
    expect(outbox.unkept.value).toBe('There is no room left on this device: something else on it has to go.');
    expect(outbox.waiting.value).toBe(1);
    expect(await outbox.flush()).toBe('later');
    expect(sent).toEqual([]);
    vi.restoreAllMocks();
    expect(await outbox.flush()).toBe('done');
    expect(sent).toEqual(['save-1']);
    expect(outbox.unkept.value).toBeUndefined();
    expect(outbox.waiting.value).toBe(0);
    kept.close();
  });

  it('that waited in a store that was thrown away are there again', async () => {
    const name = fresh();
    const kept = await KeptHomework.open(name);
    await kept.give({ ...onPaper('save-1', 0), person: 'fern' });
    await kept.give({ ...onPaper('save-2', 0), person: 'fern' });
    await throwAway(name);
    expect((await kept.waitingOf('fern')).map(({ id }) => id)).toEqual(['save-2']);
    kept.close();
  });
});
