import { describe, expect, it } from 'vitest';
import { CODE_LETTERS } from '../../../shared/people.ts';
import { isFirstRunKey, shownFirstRunKey } from '../../../src/server/people/first-run.ts';
import { inStore } from './in-store.ts';

describe('the key of the first run', () => {
  it('is twenty letters in fours, the same each time, and another one in another installation', () =>
    inStore(async (store) => {
      const key = (await shownFirstRunKey(store.people))!;
      expect(key).toMatch(new RegExp(`^[${CODE_LETTERS}]{4}(-[${CODE_LETTERS}]{4}){4}$`));
      expect(new Set(key).size).toBeGreaterThan(4);
      expect(await shownFirstRunKey(store.people)).toBe(key);
      await inStore(async (other) => expect(await shownFirstRunKey(other.people)).not.toBe(key));
    }));

  it('is taken as it is typed, whole and in no other way', () =>
    inStore(async (store) => {
      const key = (await shownFirstRunKey(store.people))!;
      expect(await isFirstRunKey(store.people, key.toLowerCase().replaceAll('-', ' '))).toBe(true);
      for (const typed of [
        key.slice(0, -1),
        `${key}${key.at(-1)}`,
        key.slice(5),
        '',
        'AAAA-AAAA-AAAA-AAAA-AAAA',
      ])
        expect(await isFirstRunKey(store.people, typed)).toBe(false);
    }));

  it('is shown no longer when there is an administrator', () =>
    inStore(async (store) => {
      await store.people.persons.make({ name: 'Tom', role: 'tutor', signIn: 'tom' });
      expect(await shownFirstRunKey(store.people)).not.toBeNull();
      await store.people.persons.make({ name: 'Ada', role: 'admin', signIn: 'ada' });
      expect(await shownFirstRunKey(store.people)).toBeNull();
    }));
});
