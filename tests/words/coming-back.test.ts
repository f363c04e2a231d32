import { expect, it } from 'vitest';
import { comingBack } from '../../src/words/coming-back.ts';
import { comingBack as said } from '../../src/words/en/coming-back.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

const inWords = (left: number, hours = 24): string => {
  const [unit, count] = comingBack(left, hours);
  return said[unit](count);
};

it('says when something comes back in the unit in which people think of it', () => {
  expect(inWords(-DAY)).toBe('now');
  expect(inWords(MINUTE)).toBe('now');
  expect(inWords(1.6 * MINUTE)).toBe('in 2 minutes');
  expect(inWords(1.5 * HOUR - 1)).toBe('in 90 minutes');
  expect(inWords(1.5 * HOUR)).toBe('in 2 hours');
  expect(inWords(23 * HOUR)).toBe('in 23 hours');
  expect(inWords(DAY)).toBe('tomorrow');
  expect(inWords(1.5 * DAY)).toBe('in 2 days');
  expect(inWords(59 * DAY)).toBe('in 59 days');
  expect(inWords(60 * DAY)).toBe('in 2 months');
  expect(inWords(365 * DAY)).toBe('in 12 months');
});

it('says tomorrow from so many hours on', () => {
  expect(inWords(20 * HOUR - 1, 20)).toBe('in 20 hours');
  expect(inWords(20 * HOUR, 20)).toBe('tomorrow');
});
