/** How the page comes by its words, and sets sentences with elements in them. */
import { describe, expect, it } from 'vitest';
import { ApiFailure, wordsOf } from '../../src/web/api.ts';
import { NotKept } from '../../src/web/local/device-store.ts';
import { PageError } from '../../src/web/page-error.ts';
import { fetchWords, set, spoken, words } from '../../src/web/words.ts';

describe('words', () => {
  it('are not there before they have been fetched, and then with the screen that speaks them', async () => {
    expect(() => words('lessons')).toThrow(RangeError);
    const screen = await spoken(['lessons'], async () => 'a screen')();
    expect(screen).toBe('a screen');
    expect(words('lessons').title).toBe('Lessons');
  });

  it('of an error are those that are there when it is read, and not when it was made', async () => {
    const early = new NotKept(({ frame }) => frame.device.full);
    expect(early).toBeInstanceOf(PageError);
    await fetchWords('first');
    expect(early.message).toBe('There is no room left on this device: something else on it has to go.');
    expect(wordsOf(early)).toBe(early.message);
  });

  it('of a refusal are the server’s own', () => {
    expect(wordsOf(new ApiFailure('name-taken', 'That name is taken.', 'Choose another.'))).toBe(
      'That name is taken. Choose another.',
    );
  });
});

describe('a sentence with elements in it', () => {
  const mark = (text: string): string => `[${text}]`;

  it('has each in its place, wherever a language puts it', () => {
    const parts = { code: mark, name: 'Fern' };
    expect(set('Nobody yet. <code>Hand it out</code>, {name}.', parts)).toEqual([
      'Nobody yet. ',
      '[Hand it out]',
      ', ',
      'Fern',
      '.',
    ]);
    expect(set('{name}: <code>hand it out</code>', parts)).toEqual(['Fern', ': ', '[hand it out]']);
  });

  it('has what nobody gives as it is written, and a value in it is never read as a mark', () => {
    expect(set('{name} of {many}', { name: '{many}' })).toEqual(['{many}', ' of ', '{many}']);
  });
});
