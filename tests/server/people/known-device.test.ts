/** Devices that are known to somebody: by a mark that nobody else can make, for eight people at most. */
import { describe, expect, it } from 'vitest';
import { deviceKnownTo, rememberDevice } from '../../../src/server/people/known-device.ts';
import type { Store } from '../../../src/store/index.ts';
import { asked, replying, sentBack } from './asked.ts';
import { inStore } from './in-store.ts';

/** Signs somebody in on a device that has this cookie; gives the one that it has afterwards. */
async function signedIn({ people }: Store, person: string, cookie = '', secure = false): Promise<string> {
  const { reply, set } = replying();
  await rememberDevice(people, asked({ cookie }), reply, person, secure);
  return set[0] ?? '';
}
const known = ({ people }: Store, cookie: string, person: string) =>
  deviceKnownTo(people, asked({ cookie }), person);

describe('a device', () => {
  it('is known to who signed in on it, by the same name each time, and to nobody else', () =>
    inStore(async (store) => {
      const cookie = sentBack(await signedIn(store, 'fern'));
      const name = await known(store, `last=1; ${cookie};theme=dark`, 'fern');
      expect(name).toMatch(/^[\w-]{12}$/);
      expect(await known(store, cookie, 'fern')).toBe(name);
      expect(await known(store, cookie, 'moss')).toBeNull();
      expect(await deviceKnownTo(store.people, asked(), 'fern')).toBeNull();
    }));

  it('is another one for the same person elsewhere', () =>
    inStore(async (store) => {
      const [here, there] = [
        sentBack(await signedIn(store, 'fern')),
        sentBack(await signedIn(store, 'fern')),
      ];
      expect(await known(store, here, 'fern')).not.toBe(await known(store, there, 'fern'));
    }));

  it('stays known to those who signed in before, and isn’t marked twice for one', () =>
    inStore(async (store) => {
      const first = sentBack(await signedIn(store, 'fern'));
      const both = sentBack(await signedIn(store, 'moss', first));
      expect(await known(store, both, 'fern')).toBe(await known(store, first, 'fern'));
      expect(await known(store, both, 'moss')).not.toBeNull();
      expect(await signedIn(store, 'fern', both)).toBe('');
    }));

  it('forgets who signed in first when a ninth does', () =>
    inStore(async (store) => {
      let cookie = '';
      for (let person = 1; person <= 8; person++)
        cookie = sentBack(await signedIn(store, `p${person}`, cookie));
      expect(await known(store, cookie, 'p1')).not.toBeNull();
      cookie = sentBack(await signedIn(store, 'p9', cookie));
      expect(await known(store, cookie, 'p1')).toBeNull();
      for (const person of ['p2', 'p8', 'p9']) expect(await known(store, cookie, person)).not.toBeNull();
    }));

  it('is not believed to know more people than it may, whatever it sends', () =>
    inStore(async (store) => {
      const own = sentBack(await signedIn(store, 'fern')).split('=')[1]!;
      const strange = `${'A'.repeat(12)}.${'A'.repeat(43)}`;
      const sent = (before: number) =>
        known(store, `polewise_device=${Array(before).fill(strange).join('~')}~${own}`, 'fern');
      expect(await sent(7)).not.toBeNull();
      expect(await sent(8)).toBeNull();
    }));

  it('is not known by a mark of somebody else, one that was changed, or one with more to it', () =>
    inStore(async (store) => {
      const [nonce, mac] = sentBack(await signedIn(store, 'fern'))
        .split('=')[1]!
        .split('.') as [string, string];
      const other = mac.startsWith('A') ? 'B' : 'A';
      for (const mark of [
        `${nonce}.${other}${mac.slice(1)}`,
        `${nonce.slice(1)}A.${mac}`,
        `${nonce}.${mac}A`,
        `A${nonce}.${mac}`,
        `${nonce}.`,
        mac,
      ])
        expect(await known(store, `polewise_device=${mark}`, 'fern')).toBeNull();
      expect(await known(store, `other_device=${nonce}.${mac}`, 'fern')).toBeNull();
      expect(await known(store, 'polewise_device', 'fern')).toBeNull();
    }));

  it('keeps its cookie as long as browsers keep any, from scripts and other sites, and by https alone where that is spoken', () =>
    inStore(async (store) => {
      const kept = (cookie: string) => cookie.split('; ').slice(1);
      const open = ['Max-Age=34560000', 'Path=/', 'HttpOnly', 'SameSite=Strict'];
      expect(kept(await signedIn(store, 'fern'))).toEqual(open);
      expect(kept(await signedIn(store, 'fern', '', true))).toEqual([...open, 'Secure']);
    }));
});
