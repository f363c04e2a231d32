/** How often something may be tried wrongly, and by whom; docs/api.md has the numbers. */
import { describe, expect, it } from 'vitest';
import { throttled } from '../../../src/server/people/limits.ts';
import { ApiFailure } from '../../../src/server/problems.ts';
import type { Service } from '../../../src/server/service.ts';
import type { Store } from '../../../src/store/index.ts';
import { inStore } from './in-store.ts';

type Tried = Parameters<typeof throttled>[1];
const HOUR = 3_600_000;
const wrong = () => Promise.reject(new ApiFailure({ says: 'sign-in-refused' }));
const broken = () => Promise.reject(new Error('the disk is full'));
const rightly = () => Promise.resolve('right');

/** What came of a try: the result, how it was refused, or the seconds to wait. */
async function tried(store: Store, what: Tried, work: () => Promise<unknown> = wrong): Promise<unknown> {
  try {
    return await throttled({ store } as Service, what, work);
  } catch (error) {
    if (error instanceof ApiFailure) return error.retryAfter ?? error.why.says;
    return (error as Error).message;
  }
}
/** How many of these could be tried wrongly before one had to wait. */
async function timesBeforeWaiting(store: Store, what: Tried): Promise<number> {
  for (let times = 0; ; times++) if (typeof (await tried(store, what)) === 'number') return times;
}

const signIn = (account: string, address: string, more: Partial<Tried> = {}): Tried => ({
  what: 'sign-in',
  account,
  address,
  ...more,
});

describe('one who tries wrongly', () => {
  it('waits after five, is told how long, and goes on when that is over', () =>
    inStore(async (store, clock) => {
      const what = signIn('fern', '192.0.2.1');
      expect(await timesBeforeWaiting(store, what)).toBe(5);
      expect(await tried(store, what, rightly)).toBe(1);
      clock.now += 1000;
      expect(await tried(store, what, rightly)).toBe('right');
      expect(await timesBeforeWaiting(store, what)).toBe(5);
    }));

  it('is told of other ways to sign in where there are some', () =>
    inStore(async (store) => {
      const says = async (what: Tried) => {
        await timesBeforeWaiting(store, what);
        return throttled({ store } as Service, what, rightly).catch(({ why }) => why);
      };
      expect(await says(signIn('fern', 'a', { otherWays: true }))).toEqual({
        says: 'too-many-tries.signingIn',
        seconds: 1,
      });
      expect(await says(signIn('moss', 'a'))).toEqual({ says: 'too-many-tries', seconds: 1 });
    }));

  it('keeps waiting nobody else: another account, address, thing or kind of try', () =>
    inStore(async (store) => {
      await timesBeforeWaiting(store, signIn('fern', '192.0.2.1'));
      for (const other of [
        signIn('moss', '192.0.2.1'),
        signIn('fern', '192.0.2.2'),
        signIn('fern', '192.0.2.1', { thing: 'code' }),
        { ...signIn('fern', '192.0.2.1'), what: 'join' },
        signIn('fern', '192.0.2.1', { device: 'desk' }),
      ])
        expect(await tried(store, other, rightly)).toBe('right');
    }));

  it('isn’t told to wait by what the server could not do', () =>
    inStore(async (store) => {
      for (let times = 0; times < 9; times++)
        expect(await tried(store, signIn('fern', 'a'), broken)).toBe('the disk is full');
      const busy = () => Promise.reject(new ApiFailure({ says: 'too-busy.signingIn' }));
      for (let times = 0; times < 9; times++)
        expect(await tried(store, signIn('fern', 'a'), busy)).toBe('too-busy.signingIn');
      expect(await timesBeforeWaiting(store, signIn('fern', 'a'))).toBe(5);
    }));

  it('on one device keeps waiting no other device, and nobody else on that one', () =>
    inStore(async (store) => {
      await timesBeforeWaiting(store, signIn('fern', 'a', { device: 'desk' }));
      expect(await tried(store, signIn('fern', 'a', { device: 'phone' }), rightly)).toBe('right');
      expect(await tried(store, signIn('moss', 'a', { device: 'desk' }), rightly)).toBe('right');
    }));

  it('on a device that the account knows waits by itself, from wherever', () =>
    inStore(async (store) => {
      const desk = (address: string) => signIn('fern', address, { device: 'desk' });
      for (let times = 0; times < 5; times++) await tried(store, desk(`192.0.2.${times}`));
      expect(await tried(store, desk('192.0.2.99'), rightly)).toBe(1);
    }));
});

describe('where much was tried', () => {
  const guess = async (store: Store, times: number, at: (time: number) => Tried): Promise<void> => {
    for (let time = 0; time < times; time++) await tried(store, at(time));
  };

  it('of one account from everywhere, a new device waits a quarter of an hour, and a known one does not', () =>
    inStore(async (store, clock) => {
      const from = (time: number) => signIn('fern', `198.51.100.${time}`);
      await guess(store, 99, from);
      expect(await tried(store, signIn('fern', 'new-1'), rightly)).toBe('right');
      await guess(store, 1, (time) => from(99 + time));
      expect(await tried(store, signIn('fern', 'new-2'), rightly)).toBe(900);
      expect(await tried(store, signIn('fern', 'new-3', { device: 'desk' }), rightly)).toBe('right');
      expect(await tried(store, signIn('moss', 'new-4'), rightly)).toBe('right');
      clock.now += 24 * HOUR;
      expect(await tried(store, signIn('fern', 'new-5'), rightly)).toBe('right');
    }));

  it('from one address, who comes new from there waits half a minute, for ten minutes', () =>
    inStore(async (store, clock) => {
      clock.now -= clock.now % HOUR;
      const of = (time: number) => signIn(`guess.${time}`, '192.0.2.1');
      await guess(store, 99, of);
      expect(await tried(store, signIn('fern', '192.0.2.1'), rightly)).toBe('right');
      await guess(store, 1, (time) => of(99 + time));
      expect(await tried(store, signIn('moss', '192.0.2.1'), rightly)).toBe(30);
      expect(await tried(store, signIn('moss', '192.0.2.2'), rightly)).toBe('right');
      expect(await tried(store, { what: 'join', address: '192.0.2.1', thing: 'code' }, rightly)).toBe(
        'right',
      );
      clock.now += HOUR / 6;
      expect(await tried(store, signIn('sedge', '192.0.2.1'), rightly)).toBe('right');
    }));

  it('on a device that the account knows, that counts for no other', () =>
    inStore(async (store, clock) => {
      for (let time = 0; time < 120; time++) {
        clock.now += 1_000_000;
        if (time === 0) clock.now -= clock.now % (24 * HOUR);
        await tried(store, signIn('fern', '192.0.2.1', { device: `desk-${time % 40}` }));
      }
      expect(await tried(store, signIn('fern', '192.0.2.2'), rightly)).toBe('right');
    }));

  it('of what has neither account nor address, nobody waits for the others', () =>
    inStore(async (store) => {
      await guess(store, 120, (time) => ({ what: 'first-run', thing: `guess-${time}` }));
      expect(await tried(store, { what: 'first-run', thing: 'key' }, rightly)).toBe('right');
    }));
});
