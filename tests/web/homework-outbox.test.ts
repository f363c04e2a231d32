import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import type { KeptSave, PaperView, SaveBatch, SaveResults } from '../../shared/homework-views.ts';
import { type GivenAnswer, KeptHomework } from '../../src/web/local/homework/kept-homework.ts';
import { type Post, type Posted, sendWaiting } from '../../src/web/local/homework/send.ts';

const opened: KeptHomework[] = [];
let names = 0;

async function device(): Promise<KeptHomework> {
  const kept = await KeptHomework.open(`homework-${++names}`);
  opened.push(kept);
  return kept;
}
afterEach(() => {
  for (const kept of opened.splice(0)) kept.close();
});

const given = (number: number, changes: Partial<GivenAnswer> = {}): GivenAnswer => ({
  person: 'fern',
  paper: 'paper-1',
  id: `save-${number}`,
  item: number,
  answer: { kind: 'lamp-states', states: { '-H1': number % 2 === 0 ? 'lit' : 'dark' } },
  chosen: [['-H1', number % 2 === 0 ? 'lit' : 'dark']],
  secondsUsed: number,
  ...changes,
});

/** Keeps saves as the server does: each once by its id, numbered in the order in which they come. */
class Server {
  readonly kept: KeptSave[] = [];
  closed = false;

  take({ answers }: SaveBatch): SaveResults {
    return {
      now: 1000,
      results: answers.map(({ id, item, answer, secondsUsed = null }) => {
        const there = this.kept.find((save) => save.id === id);
        if (there) return { result: 'already', id, number: there.number };
        if (this.closed)
          return { result: 'refused', id, problem: { code: 'closed', message: 'It has closed.', hint: '' } };
        const number = this.kept.length + 1;
        this.kept.push({ id, number, item, answer, at: 1000, secondsUsed });
        return { result: 'kept', id, number };
      }),
    };
  }
}

/** A network to it, on which each request may be lost, on either way. */
const network =
  (server: Server, broken: (request: number) => 'before' | 'after' | undefined = () => undefined): Post =>
  async (_paper, batch): Promise<Posted> => {
    requests += 1;
    const how = broken(requests);
    if (how === 'before') return { kind: 'later' };
    const results = server.take(batch);
    return how === 'after' ? { kind: 'later' } : { kind: 'results', results };
  };
let requests = 0;

const VIEW: PaperView = {
  id: 'paper-1',
  paper: {
    set: 'set-1',
    title: 'Week 1',
    attempt: 1,
    opensAt: 0,
    closesAt: 9_000_000,
    help: 'none',
    items: [],
  },
  now: 0,
  submittedAt: null,
  open: true,
  saved: [],
  hints: [],
};

describe('answers of homework kept on a device', () => {
  it('arrive in the order in which they were given, and stand in the paper that is kept', async () => {
    const kept = await device();
    const server = new Server();
    await kept.keepPaper('fern', VIEW);
    for (let number = 0; number < 90; number++) await kept.give(given(number));
    expect(await sendWaiting(kept, 'fern', network(server))).toBe('done');
    expect(server.kept.map(({ id }) => id)).toEqual(Array.from({ length: 90 }, (_, at) => `save-${at}`));
    expect(await kept.waitingOf('fern')).toEqual([]);
    expect((await kept.paper('fern', 'paper-1'))?.saved).toEqual(server.kept);
  });

  it('replace an earlier one to the same item that has not gone yet, and no other', async () => {
    const kept = await device();
    await kept.give(given(1));
    await kept.give(given(2));
    await kept.give(given(3, { item: 1 }));
    await kept.give(given(4, { item: 1, paper: 'paper-2' }));
    await kept.give(given(5, { item: 1, person: 'gorse' }));
    expect((await kept.waitingOf('fern')).map(({ id }) => id)).toEqual(['save-2', 'save-3', 'save-4']);
    expect((await kept.waitingOf('gorse')).map(({ id }) => id)).toEqual(['save-5']);
  });

  it('survive a network that loses requests and replies at any point: the last of each item counts, none twice', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.nat(5), { minLength: 1, maxLength: 25 }),
        fc.array(fc.constantFrom('before' as const, 'after' as const, undefined, undefined), {
          maxLength: 20,
        }),
        async (items, losses) => {
          const kept = await device();
          const server = new Server();
          requests = 0;
          const post = network(server, (request) => losses[request - 1]);
          for (const [number, item] of items.entries()) {
            await kept.give(given(number, { item }));
            // Sometimes something is given while the one before is still on its way.
            if (number % 3 === 0) await sendWaiting(kept, 'fern', post);
          }
          for (let tries = 0; tries <= losses.length; tries++)
            if ((await sendWaiting(kept, 'fern', post)) === 'done') break;
          expect(await kept.waitingOf('fern')).toEqual([]);
          const ids = server.kept.map(({ id }) => id);
          expect(new Set(ids).size).toBe(ids.length);
          const numbers = ids.map((id) => Number(id.slice('save-'.length)));
          expect(numbers).toEqual(numbers.toSorted((one, other) => one - other));
          for (const item of new Set(items)) {
            const last = items.lastIndexOf(item);
            expect(server.kept.findLast((save) => save.item === item)?.id).toBe(`save-${last}`);
          }
          kept.close();
        },
      ),
      { numRuns: 40 },
    );
  });

  it('that come too late are told with the reason and not sent again', async () => {
    const kept = await device();
    const server = new Server();
    await kept.give(given(1));
    await sendWaiting(kept, 'fern', network(server));
    server.closed = true;
    await kept.give(given(2));
    expect(await sendWaiting(kept, 'fern', network(server))).toBe('done');
    expect(await kept.waitingOf('fern')).toEqual([]);
    expect(await kept.refusedOf('fern', 'paper-1')).toEqual([
      { person: 'fern', paper: 'paper-1', item: 2, code: 'closed', message: 'It has closed.' },
    ]);
    expect(await kept.refusedOf('gorse', 'paper-1')).toEqual([]);
  });

  it('of which one is refused with the whole request: the others still arrive', async () => {
    const kept = await device();
    const server = new Server();
    for (let number = 0; number < 9; number++) await kept.give(given(number));
    const post: Post = async (_paper, batch) =>
      batch.answers.some(({ id }) => id === 'save-4')
        ? { kind: 'refused', code: 'bad-value', message: 'That is no answer.' }
        : { kind: 'results', results: server.take(batch) };
    expect(await sendWaiting(kept, 'fern', post)).toBe('done');
    expect(server.kept.map(({ id }) => id)).toEqual([0, 1, 2, 3, 5, 6, 7, 8].map((at) => `save-${at}`));
    expect((await kept.refusedOf('fern', 'paper-1')).map(({ item }) => item)).toEqual([4]);
  });

  it('wait when nobody is signed in, and only ever go in the name of who gave them', async () => {
    const kept = await device();
    const server = new Server();
    await kept.give(given(1));
    await kept.give(given(2, { person: 'gorse' }));
    expect(await sendWaiting(kept, 'fern', async () => ({ kind: 'signed-out' }))).toBe('signed-out');
    expect(await kept.waitingOf('fern')).toHaveLength(1);
    await sendWaiting(kept, 'gorse', network(server));
    expect(server.kept.map(({ id }) => id)).toEqual(['save-2']);
    expect(await kept.waitingOf('fern')).toHaveLength(1);
  });

  it('of one person who erases everything go, with papers and lists; those of another stay', async () => {
    const kept = await device();
    const server = new Server();
    for (const person of ['fern', 'gorse']) {
      await kept.give(given(1, { person, id: `${person}-1` }));
      await kept.keepPaper(person, VIEW);
      await kept.keepList(person, []);
      await kept.refuse(
        [],
        [{ person, paper: 'paper-1', item: 2, code: 'closed', message: 'It has closed.' }],
      );
    }
    await kept.eraseOf('fern');
    expect(await kept.waitingOf('fern')).toEqual([]);
    expect(await kept.refusedOf('fern', 'paper-1')).toEqual([]);
    expect(await kept.paper('fern', 'paper-1')).toBeUndefined();
    expect(await kept.list('fern')).toBeUndefined();
    expect(await kept.refusedOf('gorse', 'paper-1')).toHaveLength(1);
    expect(await kept.paper('gorse', 'paper-1')).toEqual(VIEW);
    expect(await kept.list('gorse')).toEqual([]);
    expect(await sendWaiting(kept, 'gorse', network(server))).toBe('done');
    expect(server.kept.map(({ id }) => id)).toEqual(['gorse-1']);
  });
});
