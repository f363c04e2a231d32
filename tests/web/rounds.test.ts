import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { Rounds } from '../../src/web/local/rounds.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** Work that ends when it is told to, and what it was told. */
function work() {
  const ends: ((result: string) => void)[] = [];
  const rounds = new Rounds(
    () => new Promise<string>((resolve) => ends.push(resolve)),
    (result) => result === 'later',
    10,
  );
  return { rounds, ends };
}

it('goes in one round at a time: what is wanted while one is under way is done in one more', async () => {
  const { rounds, ends } = work();
  const first = rounds.run();
  const wanted = [rounds.run(), rounds.run()];
  expect(ends).toHaveLength(1);
  ends[0]!('done');
  expect(await first).toBe('done');
  await vi.waitFor(() => expect(ends).toHaveLength(2));
  ends[1]!('after');
  expect(await Promise.all(wanted)).toEqual(['after', 'after']);
  expect(ends).toHaveLength(2);
});

it('is tried again after twice as long each time, up to the longest, and from the beginning once it went well', async () => {
  const { rounds, ends } = work();
  rounds.run().catch(() => undefined);
  for (const [at, seconds] of [4, 8, 10, 10].entries()) {
    ends[at]!('later');
    await vi.advanceTimersByTimeAsync(seconds * 1000 - 1);
    expect(ends).toHaveLength(at + 1);
    await vi.advanceTimersByTimeAsync(1);
    expect(ends).toHaveLength(at + 2);
  }
  ends.at(-1)!('done');
  await vi.advanceTimersByTimeAsync(60_000);
  expect(ends).toHaveLength(5);
  rounds.run().catch(() => undefined);
  ends.at(-1)!('later');
  await vi.advanceTimersByTimeAsync(4000);
  expect(ends).toHaveLength(7);
});

it('ends when nothing is under way any more, and goes on when it is told to', async () => {
  const { rounds, ends } = work();
  rounds.run().catch(() => undefined);
  const next = rounds.run();
  let ended = false;
  const ending = rounds.end().then(() => {
    ended = true;
  });
  await vi.advanceTimersByTimeAsync(1000);
  expect(ended).toBe(false);
  ends[0]!('later');
  await ending;
  expect(await next).toBeUndefined();
  rounds.soon(0);
  await vi.advanceTimersByTimeAsync(60_000);
  expect(ends).toHaveLength(1);
  rounds.goOn();
  await vi.advanceTimersByTimeAsync(0);
  expect(ends).toHaveLength(2);
});
