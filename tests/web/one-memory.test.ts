/**
 * The page and its server come to one memory, whatever the clocks of the devices say: the server says when an answer counts
 * as given, and the page goes by it.
 */
import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { afterEach, expect, it } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import type { Recall } from '../../shared/memory.ts';
import { partsCounted } from '../../src/practice/index.ts';
import { MemoryKept } from '../../src/web/engine/memory-kept.ts';
import { Local } from '../../src/web/local/database.ts';
import { type Fetch, synchronise } from '../../src/web/local/sync.ts';
import { type Serving, serving } from '../server/serving.ts';
import { answerWith, DAY, MORNING } from '../support/answers.ts';

let server: Serving | undefined;
afterEach(() => server?.end());

const HOUR = DAY / 24;

/** A device as the page has it: its store, its clock, and the memory of its engine. */
class Device {
  readonly memory = new MemoryKept();
  readonly local: Local;
  /** How far its clock is ahead. */
  readonly ahead: number;

  constructor(local: Local, ahead: number) {
    this.local = local;
    this.ahead = ahead;
  }

  async answer(id: string, now: number, rest: { skill: string; share: 0 | 0.5 | 1 }): Promise<void> {
    const record = answerWith({ id, at: now + this.ahead, ...rest });
    // As the page judges: with its parts counted.
    const parts = partsCounted(record.question, record.mark);
    await this.local.keep({ ...record, attempt: { ...record.attempt, parts } });
    const lines = await this.local.lines();
    this.memory.add(lines.filter((line) => line.id === id));
  }

  exchange(ask: Fetch) {
    return synchronise(this.local, ask, {
      ahead: (states) => this.memory.add([], states),
      lines: (fresh) => this.memory.add(fresh),
      anew: (all) => {
        this.memory.forget();
        this.memory.add(all);
      },
      coming: () => undefined,
      settings: () => undefined,
    });
  }
}

const asking =
  (to: Serving): Fetch =>
  async (path, { method = 'GET', body } = {}) => {
    const reply = await to.ask({
      method: method as 'GET',
      url: path,
      ...(typeof body === 'string' ? { payload: body, headers: { 'content-type': 'application/json' } } : {}),
    });
    return new Response(reply.body, { status: reply.statusCode });
  };

type Step =
  | { readonly what: 'answer'; readonly device: number; readonly skill: string; readonly share: 0 | 0.5 | 1 }
  | { readonly what: 'exchange'; readonly device: number }
  | { readonly what: 'replaced' }
  | { readonly what: 'wait'; readonly hours: number };

const someDevice = fc.integer({ min: 0, max: 2 });
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({
      what: fc.constant('answer' as const),
      device: someDevice,
      skill: fc.constantFrom('changeover', 'seal-in'),
      share: fc.constantFrom(0 as const, 0.5 as const, 1 as const),
    }),
  },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('exchange' as const), device: someDevice }) },
  // Everything erased there, or another history put in its place.
  { weight: 1, arbitrary: fc.constant({ what: 'replaced' as const }) },
  // The server's own clock may be put back as well.
  {
    weight: 2,
    arbitrary: fc.record({ what: fc.constant('wait' as const), hours: fc.integer({ min: -3, max: 60 }) }),
  },
);
const clocks = fc.array(fc.constantFrom(0, DAY, -DAY, 400 * DAY, 20 * HOUR, -90_000), {
  minLength: 3,
  maxLength: 3,
});

let runs = 0;

it('comes out the same on every device and on the server, in whatever order answers are given and sent', async () => {
  await fc.assert(
    fc.asyncProperty(clocks, fc.array(step, { minLength: 3, maxLength: 25 }), async (ahead, steps) => {
      let now = MORNING;
      const run = ++runs;
      const here = await serving({ now: () => now });
      server = here;
      const ask = asking(here);
      const devices = await Promise.all(
        ahead.map(async (by, at) => new Device(await Local.open(`one-memory-${run}-${at}`), by)),
      );
      for (const [at, done] of steps.entries()) {
        if (done.what === 'wait') now += done.hours * HOUR;
        else if (done.what === 'replaced') await here.store.erasePractice('me');
        else if (done.what === 'exchange') await devices[done.device]!.exchange(ask);
        else await devices[done.device]!.answer(`answer-${at}`, now, done);
      }
      // Everybody has been at a network twice.
      for (const device of [...devices, ...devices]) expect(await device.exchange(ask)).toBe('done');
      const { recalls } = await here.call(apiRoutes.recalls);
      for (const { memory } of devices) expect(Object.fromEntries(memory.recalls)).toEqual(recalls);
      // And as it is after all of it has been worked out anew.
      await here.store.rebuildRecalls('me');
      expect((await here.call(apiRoutes.recalls)).recalls).toEqual(recalls);
      const latest = Math.max(
        0,
        ...Object.values(recalls).map((recall: Recall) => (recall.kind === 'begun' ? recall.lastAt : 0)),
      );
      // Nothing counts as given after the latest moment there ever was, however far a clock ran ahead.
      expect(latest).toBeLessThanOrEqual(MORNING + 25 * 60 * HOUR);
      for (const { local } of devices) local.close();
      await here.end();
      server = undefined;
    }),
    { numRuns: 40 },
  );
});

it('comes out the same in two tabs of one device, whichever of them fetches', async () => {
  const here = await serving({ now: () => MORNING + 30 * DAY });
  server = here;
  await here.send([0, 1, 2].map((day) => answerWith({ id: `elsewhere-${day}`, at: MORNING + day * DAY })));
  const ask = asking(here);
  const withoutLines: Fetch = (path, init) =>
    path.startsWith('/api/lines') ? Promise.reject(new TypeError('no network')) : ask(path, init);
  const [one, other] = [
    new Device(await Local.open('one-memory-tabs'), 0),
    new Device(await Local.open('one-memory-tabs'), DAY),
  ];
  await one.exchange(withoutLines);
  await other.exchange(withoutLines);
  await one.answer('mine', MORNING + 29 * DAY, { skill: 'changeover', share: 0 });
  await other.answer('other', MORNING + 30 * DAY, { skill: 'seal-in', share: 1 });
  for (const tab of [one, other, one]) expect(await tab.exchange(ask)).toBe('done');
  const { recalls } = await here.call(apiRoutes.recalls);
  expect(Object.keys(recalls)).toHaveLength(2);
  for (const { memory } of [one, other]) expect(Object.fromEntries(memory.recalls)).toEqual(recalls);
  for (const { local } of [one, other]) local.close();
});

it('goes by how the learner stands, and what was answered on top of it, until the answers themselves are here', async () => {
  const now = MORNING + 30 * DAY;
  const here = await serving({ now: () => now });
  server = here;
  const before = [0, 1, 2, 9].map((day) => answerWith({ id: `elsewhere-${day}`, at: MORNING + day * DAY }));
  await here.send(before);
  const device = new Device(await Local.open('one-memory-ahead'), 0);
  const ask = asking(here);
  const withoutLines: Fetch = (path, init) =>
    path.startsWith('/api/lines') ? Promise.reject(new TypeError('no network')) : ask(path, init);
  await device.exchange(withoutLines);
  expect(Object.fromEntries(device.memory.recalls)).toEqual((await here.call(apiRoutes.recalls)).recalls);
  await device.answer('mine', now, { skill: 'changeover', share: 0 });
  const known = device.memory.recalls.get('changeover');
  expect(known).toMatchObject({ reviews: 5, lapses: 1 });
  // Sent, and told by another device's reply as well: it counts once.
  await device.exchange(withoutLines);
  expect(device.memory.recalls.get('changeover')).toEqual(known);
  expect((await here.call(apiRoutes.recalls)).recalls['changeover']).toEqual(known);
  expect(await device.exchange(ask)).toBe('done');
  expect(device.memory.recalls.get('changeover')).toEqual(known);
  device.local.close();
});
