/** Passwords are hashed some at a time: nobody who tries many keeps the others from signing in. */
import { expect, it } from 'vitest';
import { Passwords } from '../../../src/server/people/passwords.ts';
import { outcome } from './asked.ts';

it('lets six hundred of one wait and no more, and those of others all the same', async () => {
  const passwords = new Passwords({ memoryCost: 8, timeCost: 1, parallelism: 1 });
  const hash = (owner: string) => outcome(() => passwords.hash('nine potted ferns', owner));
  // Two are worked on at once.
  const taken = Array.from({ length: 602 }, () => hash('fern'));
  expect(await hash('fern')).toBe('too-busy.signingIn');
  expect(await hash('moss')).toBe('let in');
  expect(new Set(await Promise.all(taken))).toEqual(new Set(['let in']));
  expect(await hash('fern')).toBe('let in');
});
