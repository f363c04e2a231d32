/** When answers of homework go, how often it is tried, and what is said of it meanwhile. */
import 'fake-indexeddb/auto';
import './support/words.ts';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { SaveBatch } from '../../shared/homework-views.ts';
import { type GivenAnswer, KeptHomework } from '../../src/web/local/homework/kept-homework.ts';
import { Outbox } from '../../src/web/local/homework/outbox.ts';
import { type Post, type Posted, sendWaiting } from '../../src/web/local/homework/send.ts';
import { words } from '../../src/web/words.ts';

const SECOND = 1000;
const NOW = Date.UTC(2026, 8, 14, 6);
let kept: KeptHomework;
let names = 0;
/** What was posted, request by request. */
let posted: { paper: string; ids: string[] }[];
/** What becomes of the next requests. */
let reply: (batch: SaveBatch) => Posted;

const takes = ({ answers }: SaveBatch): Posted => ({
  kind: 'results',
  results: {
    now: NOW,
    results: answers.map(({ id, item }) => ({ result: 'kept', id, number: item + 1 })),
  },
});
const post: Post = async (paper, batch) => {
  posted.push({ paper, ids: batch.answers.map(({ id }) => id) });
  return reply(batch);
};
const given = (item: number, changes: Partial<GivenAnswer> = {}): GivenAnswer => ({
  person: 'fern',
  paper: 'paper-1',
  id: `save-${item}`,
  item,
  answer: { kind: 'lamp-states', states: { '-H1': 'lit' } },
  chosen: [['-H1', 'lit']],
  secondsUsed: 3,
  ...changes,
});

beforeEach(async () => {
  posted = [];
  reply = takes;
  kept = await KeptHomework.open(`sending-${++names}`);
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'Date'], now: NOW });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
  kept.close();
});

const outbox = (person = 'fern'): Outbox => new Outbox(kept, person, post);
/** Lets time pass until something has been sent; fails where nothing is within so many milliseconds. */
async function sentWithin(box: Outbox, milliseconds: number): Promise<void> {
  const before = box.rounds.value;
  await vi.advanceTimersByTimeAsync(milliseconds);
  await vi.waitFor(() => expect(box.rounds.value).toBe(before + 1));
}
/** Lets time pass in which nothing is sent. */
async function quiet(box: Outbox, milliseconds: number): Promise<void> {
  const before = box.rounds.value;
  await vi.advanceTimersByTimeAsync(milliseconds);
  // What would have been begun has time to reach the store and come back.
  await kept.waitingOf('fern');
  await kept.waitingOf('fern');
  expect(box.rounds.value).toBe(before);
}

describe('an answer', () => {
  it('is on the device when it is given, and goes a moment after the last touch, with the others', async () => {
    const box = outbox();
    await box.give(given(1));
    expect(box.waiting.value).toBe(1);
    expect(posted).toEqual([]);
    await quiet(box, 600);
    await box.give(given(2));
    expect(box.waiting.value).toBe(2);
    await quiet(box, 600);
    await sentWithin(box, 100);
    expect(posted).toEqual([{ paper: 'paper-1', ids: ['save-1', 'save-2'] }]);
    expect([box.waiting.value, box.standing.value]).toEqual([0, 'done']);
    await quiet(box, 600 * SECOND);
  });

  it('that can’t be sent is tried after four seconds, then twice as long each time, at most a minute', async () => {
    reply = () => ({ kind: 'later' });
    const box = outbox();
    await box.give(given(1));
    await sentWithin(box, 700);
    expect([box.waiting.value, box.standing.value]).toEqual([1, 'later']);
    for (const seconds of [4, 8, 16, 32, 60, 60]) {
      await quiet(box, seconds * SECOND - 1);
      await sentWithin(box, 1);
    }
    // What went begins again with short waits.
    reply = takes;
    await sentWithin(box, 60 * SECOND);
    reply = () => ({ kind: 'later' });
    await box.give(given(2));
    await sentWithin(box, 700);
    await sentWithin(box, 4 * SECOND);
  });

  it('of which a network says nothing but an error waits too', async () => {
    const box = new Outbox(kept, 'fern', () => Promise.reject(new Error('a fault')));
    await box.give(given(1));
    expect(await box.flush()).toBe('later');
    expect([box.waiting.value, box.standing.value]).toEqual([1, 'later']);
  });

  it('isn’t tried again by itself while nobody is signed in', async () => {
    reply = () => ({ kind: 'signed-out' });
    const box = outbox();
    await box.give(given(1));
    await sentWithin(box, 700);
    expect(box.standing.value).toBe('signed-out');
    await quiet(box, 600 * SECOND);
    expect(box.waiting.value).toBe(1);
  });

  it('given while others are on their way goes in a round of its own', async () => {
    const box = outbox();
    let answered = (): void => undefined;
    const slow = new Outbox(kept, 'fern', async (paper, batch) => {
      await new Promise<void>((resolve) => {
        answered = resolve;
      });
      return post(paper, batch);
    });
    await box.kept.give(given(1));
    const first = slow.flush();
    await vi.waitFor(() => expect(slow.standing.value).toBe('sending'));
    await kept.give(given(2));
    const second = slow.flush();
    await vi.waitFor(async () => {
      answered();
      expect(posted).toHaveLength(2);
    });
    expect([await first, await second]).toEqual(['done', 'done']);
    expect(posted.flatMap(({ ids }) => ids).sort()).toEqual(['save-1', 'save-2']);
  });

  it('of another person stays where it is', async () => {
    await kept.give(given(1, { person: 'gorse' }));
    const box = outbox();
    expect(await box.flush()).toBe('done');
    expect([posted, box.waiting.value]).toEqual([[], 0]);
    expect(await kept.waitingOf('gorse')).toHaveLength(1);
  });

  it('that the server doesn’t take is counted for its paper, before it is said how sending went', async () => {
    const box = outbox();
    for (const [item, paper] of [
      [1, 'paper-1'],
      [2, 'paper-1'],
      [3, 'paper-2'],
    ] as const)
      await box.give(given(item, { paper }));
    reply = () => ({ kind: 'refused', code: 'closed', message: 'It has closed.' });
    const told: (readonly [string, number])[] = [];
    box.standing.subscribe((standing) => told.push([standing, box.refused.value.size]));
    expect(await box.flush()).toBe('done');
    expect(box.refused.value).toEqual(
      new Map([
        ['paper-1', 2],
        ['paper-2', 1],
      ]),
    );
    expect(told.at(-1)).toEqual(['done', 2]);
    expect(await kept.refusedCounts('gorse')).toEqual(new Map());
  });
});

describe('the outbox', () => {
  it('sends when it is started, when the network is back, and when the page is looked at again', async () => {
    const [page, frame] = [new EventTarget(), new EventTarget()];
    vi.stubGlobal('document', page);
    vi.stubGlobal('addEventListener', frame.addEventListener.bind(frame));
    const box = outbox();
    box.start();
    await sentWithin(box, 0);
    frame.dispatchEvent(new Event('online'));
    await sentWithin(box, 0);
    page.dispatchEvent(new Event('visibilitychange'));
    await sentWithin(box, 0);
  });

  it('tells the time by the server’s clock as soon as it has heard it', async () => {
    const box = outbox();
    expect(box.ahead.value).toBeNull();
    expect(box.now()).toBe(NOW);
    reply = (batch) => {
      const sent = takes(batch);
      return sent.kind === 'results' ? { ...sent, results: { ...sent.results, now: NOW + 90_000 } } : sent;
    };
    await box.give(given(1));
    await box.flush();
    expect(box.ahead.value).toBe(90_000);
    vi.setSystemTime(NOW + 5000);
    expect(box.now()).toBe(NOW + 95_000);
  });

  it('says that it is sending only while something waits', async () => {
    const box = outbox();
    const told: string[] = [];
    box.standing.subscribe((standing) => told.push(standing));
    await box.flush();
    expect(told).toEqual(['unknown', 'done']);
    await box.give(given(1));
    await box.flush();
    expect(told).toEqual(['unknown', 'done', 'sending', 'done']);
  });

  it('tells of answers that the browser threw away, and sends what is left at once', async () => {
    const box = outbox();
    box.waiting.value = 3;
    kept.store.whenEvicted(1);
    expect(box.gone.value).toBe(2);
    await sentWithin(box, 0);
    kept.store.whenEvicted(4);
    expect(box.gone.value).toBe(2);
  });

  it('tries an answer that the device did not keep again after three seconds', async () => {
    const box = outbox();
    const full = vi.spyOn(kept, 'give').mockRejectedValue(new Error('It is full.'));
    await box.keepUntaken();
    expect(box.unkept.value).toBeUndefined();
    const giving = box.give(given(1));
    await giving;
    expect([box.unkept.value, box.waiting.value]).toEqual(['It is full.', 1]);
    await sentWithin(box, 3 * SECOND);
    expect([box.standing.value, posted]).toEqual(['later', []]);
    full.mockRestore();
    await sentWithin(box, 4 * SECOND);
    expect([box.unkept.value, box.standing.value]).toEqual([undefined, 'done']);
    expect(posted).toEqual([{ paper: 'paper-1', ids: ['save-1'] }]);
  });
});

describe('answers that the device did not keep', () => {
  it('are all tried again, each the latest of its item', async () => {
    const box = outbox();
    const full = vi.spyOn(kept, 'give').mockRejectedValue(new Error('It is full.'));
    for (const one of [
      given(1),
      given(2),
      given(1, { id: 'later-1' }),
      given(1, { paper: 'paper-2', id: 'other' }),
    ])
      await box.give(one);
    expect(box.waiting.value).toBe(3);
    full.mockRestore();
    expect(await box.flush()).toBe('done');
    expect(posted.flatMap(({ ids }) => ids).toSorted()).toEqual(['later-1', 'other', 'save-2']);
    expect(box.waiting.value).toBe(0);
  });

  it('stay in hand where one to the same item was kept just before', async () => {
    const box = outbox();
    const give = kept.give.bind(kept);
    let meanwhile: Promise<void> | undefined;
    vi.spyOn(kept, 'give')
      .mockImplementationOnce(async (one) => {
        const keeping = give(one);
        meanwhile = box.give(given(1, { id: 'later-1' }));
        await keeping;
      })
      .mockRejectedValueOnce(new Error('It is full.'));
    await box.give(given(1));
    await meanwhile;
    await box.flush();
    expect(posted.flatMap(({ ids }) => ids).at(-1)).toBe('later-1');
  });
});

describe('what is sent at once', () => {
  it('is of one paper, and at most forty', async () => {
    for (let item = 0; item < 42; item++) await kept.give(given(item));
    await kept.give(given(0, { paper: 'paper-2', id: 'other-0' }));
    await kept.give(given(50));
    expect(await sendWaiting(kept, 'fern', post)).toBe('done');
    expect(posted.map(({ paper, ids }) => [paper, ids.length])).toEqual([
      ['paper-1', 40],
      ['paper-1', 2],
      ['paper-2', 1],
      ['paper-1', 1],
    ]);
  });

  it('is halved where the server refuses all of it, until it shows which is at fault, and is whole again then', async () => {
    for (let item = 0; item < 41; item++) await kept.give(given(item));
    reply = (batch) =>
      batch.answers.some(({ id }) => id === 'save-3')
        ? { kind: 'refused', code: 'bad-value', message: 'That is no answer.' }
        : takes(batch);
    await sendWaiting(kept, 'fern', post);
    expect(posted.map(({ ids }) => ids.length)).toEqual([
      ...[40, 20, 10, 5, 3],
      ...[38, 19, 10, 5, 3, 2, 1],
      37,
    ]);
    expect(await kept.refusedOf('fern', 'paper-1')).toEqual([
      { person: 'fern', paper: 'paper-1', item: 3, code: 'bad-value', message: 'That is no answer.' },
    ]);
    expect(await kept.refusedOf('fern', 'paper-2')).toEqual([]);
  });

  it('stays in line where the server says nothing of it', async () => {
    await kept.give(given(1));
    await kept.give(given(2));
    let first = true;
    reply = (batch) => {
      if (!first) return { kind: 'later' };
      first = false;
      return takes({ answers: batch.answers.slice(0, 1) });
    };
    expect(await sendWaiting(kept, 'fern', post)).toBe('later');
    expect((await kept.waitingOf('fern')).map(({ id }) => id)).toEqual(['save-2']);
  });
});

describe('a paper kept on the device', () => {
  const view = (saved: number[]) => ({
    id: 'paper-1',
    paper: {
      set: 'set-1',
      title: 'Week 1',
      attempt: 1,
      opensAt: 0,
      closesAt: 9,
      help: 'none' as const,
      items: [],
    },
    now: 0,
    submittedAt: null,
    open: true,
    saved: saved.map((number) => save(number)),
    hints: [],
  });
  const save = (number: number) => ({
    id: `save-${number}`,
    number,
    item: number,
    answer: { kind: 'lamp-states' as const, states: { '-H1': 'lit' as const } },
    at: NOW,
    secondsUsed: 3,
  });
  const numbers = async (person: string) =>
    (await kept.paper(person, 'paper-1'))?.saved.map(({ number }) => number);

  it('has what arrived, each once, by its number, and the paper of nobody else has it', async () => {
    await kept.keepPaper('fern', view([2, 5]));
    await kept.keepPaper('gorse', view([2]));
    await kept.arrived(
      'fern',
      'paper-1',
      [4, 5, 1].map((number) => ({ key: 100 + number, save: save(number) })),
    );
    expect(await numbers('fern')).toEqual([1, 2, 4, 5]);
    expect(await numbers('gorse')).toEqual([2]);
  });

  it('isn’t made by what arrived', async () => {
    await kept.arrived('fern', 'paper-1', [{ key: 1, save: save(1) }]);
    expect(await numbers('fern')).toBeUndefined();
  });
});

describe('a store that the browser has thrown away', () => {
  const throwAway = (): Promise<unknown> =>
    new Promise((resolve, reject) => {
      const request = indexedDB.deleteDatabase(`sending-${names}`);
      request.onsuccess = () => resolve(undefined);
      request.onerror = () => reject(request.error);
    });
  const left = async (): Promise<string[]> => {
    await throwAway();
    return (await kept.waitingOf('fern')).map(({ id }) => id);
  };

  it('gets back what had not arrived, and neither what had nor what was refused', async () => {
    for (const item of [1, 2, 3]) await kept.give(given(item));
    const [first, second] = await kept.waitingOf('fern');
    const { id, item, answer, secondsUsed } = first!;
    const save = { id, number: 1, item, answer, at: NOW, secondsUsed };
    await kept.arrived('fern', 'paper-1', [{ key: first!.key, save }]);
    await kept.refuse(
      [second!.key],
      [{ person: 'fern', paper: 'paper-1', item: 2, code: 'closed', message: '' }],
    );
    let told = -1;
    kept.store.whenEvicted = (count) => {
      told = count;
    };
    expect(await left()).toEqual(['save-3']);
    expect(told).toBe(1);
  });

  it('gets back what was given after what arrived for the same item', async () => {
    await kept.give(given(1));
    const [first] = await kept.waitingOf('fern');
    await kept.give(given(1, { id: 'later-1' }));
    const { id, item, answer, secondsUsed } = first!;
    await kept.arrived('fern', 'paper-1', [
      { key: first!.key, save: { id, number: 1, item, answer, at: NOW, secondsUsed } },
    ]);
    expect(await left()).toEqual(['later-1']);
  });
});

describe('a browser that keeps nothing', () => {
  it('is told in words', async () => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('no', 'SecurityError');
    });
    await expect(KeptHomework.open('nothing')).rejects.toThrow(words('first').homeworkTold.keepsNothing);
    vi.restoreAllMocks();
  });
});
