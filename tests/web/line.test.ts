import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { KeptHomework } from '../../src/web/local/homework/kept-homework.ts';
import { sendWaiting } from '../../src/web/local/homework/send.ts';
import { sendLine } from '../../src/web/local/line.ts';

it('sends everything but what is at fault, in order, whatever is refused together with it', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.boolean(), { maxLength: 40 }),
      fc.integer({ min: 1, max: 12 }),
      async (sound, batch) => {
        const line = sound.map((_, at) => at);
        const taken: number[] = [];
        const givenUp: number[] = [];
        const result = await sendLine<number, 'offline'>(
          {
            first: async (most) => line.slice(0, most),
            async send(some) {
              expect(some.length).toBeLessThanOrEqual(batch);
              if (some.every((at) => sound[at])) {
                taken.push(...line.splice(0, some.length));
                return { kind: 'taken' };
              }
              return {
                kind: 'refused',
                async giveUp() {
                  expect(some).toHaveLength(1);
                  givenUp.push(...line.splice(0, 1));
                },
              };
            },
          },
          batch,
        );
        expect(result).toBe('done');
        expect(taken).toEqual(sound.flatMap((is, at) => (is ? [at] : [])));
        expect(givenUp).toEqual(sound.flatMap((is, at) => (is ? [] : [at])));
      },
    ),
  );
});

it('stops where nothing can be sent now, and keeps what waits', async () => {
  const line = [1, 2, 3];
  const stopped = await sendLine<number, 'offline'>(
    { first: async (most) => line.slice(0, most), send: async () => ({ kind: 'stopped', why: 'offline' }) },
    2,
  );
  expect(stopped).toBe('offline');
  expect(line).toEqual([1, 2, 3]);
});

it('takes over what a page before this one kept of homework: the same names, and nothing to be changed', async () => {
  const name = 'homework-of-before';
  const opening = indexedDB.open(name, 1);
  opening.onupgradeneeded = () => {
    const { result } = opening;
    result.createObjectStore('waiting', { autoIncrement: true }).createIndex('by-person', 'person');
    result.createObjectStore('refused', { autoIncrement: true });
    result.createObjectStore('papers', { keyPath: ['person', 'id'] });
    result.createObjectStore('lists');
    const waiting = opening.transaction!.objectStore('waiting');
    for (const id of ['first', 'second'])
      waiting.add({
        person: 'fern',
        paper: 'paper-1',
        id,
        item: id === 'first' ? 0 : 1,
        answer: { kind: 'lamp-states', states: { '-H1': 'lit' } },
        chosen: [['-H1', 'lit']],
        secondsUsed: 3,
      });
  };
  await new Promise((resolve) => {
    opening.onsuccess = resolve;
  });
  opening.result.close();
  const kept = await KeptHomework.open(name);
  const sent: string[] = [];
  const result = await sendWaiting(kept, 'fern', async (_paper, { answers }) => {
    sent.push(...answers.map(({ id }) => id));
    return {
      kind: 'results',
      results: { now: 1, results: answers.map(({ id }) => ({ result: 'kept', id, number: 1 })) },
    };
  });
  expect(result).toBe('done');
  expect(sent).toEqual(['first', 'second']);
  expect(await kept.waitingOf('fern')).toEqual([]);
  kept.close();
});
