/**
 * Times of a homework set where the clocks change: in Europe/Berlin summer time ends on the last Sunday of October and
 * begins on the last of March, both at 01:00 UTC (Directive 2000/84/EC).
 */
import './support/words.ts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { whenText } from '../../src/web/moments.ts';
import { clockNote, fieldText, momentOf, typedMoment } from '../../src/web/screens/homework/moments.ts';
import { freshDraft, wishOf } from '../../src/web/screens/homework/tutor/set-draft.ts';

const zone = process.env['TZ'];
beforeAll(() => {
  process.env['TZ'] = 'Europe/Berlin';
});
afterAll(() => {
  if (zone === undefined) delete process.env['TZ'];
  else process.env['TZ'] = zone;
});

describe('a time that is typed where the clocks change', () => {
  it('is the later one in the night in which it is there twice', () => {
    expect(momentOf('2026-10-25T02:30')).toBe(Date.parse('2026-10-25T01:30:00Z'));
    expect(momentOf('2026-10-25T02:00')).toBe(Date.parse('2026-10-25T01:00:00Z'));
    expect(momentOf('2026-10-25T01:59')).toBe(Date.parse('2026-10-24T23:59:00Z'));
    expect(momentOf('2026-10-25T03:00')).toBe(Date.parse('2026-10-25T02:00:00Z'));
  });

  it('is not taken for something else where the clocks leave it out', () => {
    expect(typedMoment('2026-03-29T02:30')).toEqual({ kind: 'left-out' });
    expect(momentOf('2026-03-29T02:30')).toBeUndefined();
    expect(momentOf('2026-03-29T03:00')).toBe(Date.parse('2026-03-29T01:00:00Z'));
    expect(clockNote('2026-03-29T02:30')).toMatch(/no such time/);
  });

  it('means the same with the seconds that some browsers add', () => {
    expect(momentOf('2026-10-25T02:30:00')).toBe(momentOf('2026-10-25T02:30'));
    expect(momentOf('2026-03-29T02:30:00')).toBeUndefined();
  });

  it('comes back to the minute at every hour of the year, or an hour later in that one night', () => {
    const moved: string[] = [];
    for (let at = Date.parse('2026-01-01T00:00Z'); at < Date.parse('2027-01-01T00:00Z'); at += 1_800_000)
      if (momentOf(fieldText(at)) !== at) moved.push(new Date(at).toISOString());
    expect(moved).toEqual(['2026-10-25T00:00:00.000Z', '2026-10-25T00:30:00.000Z']);
  });

  it('is refused in words in a new set', () => {
    const draft = {
      ...freshDraft(Date.parse('2026-03-20T12:00Z')),
      title: 'Week 1',
      skills: ['make-contact'],
      closesAt: '2026-03-29T02:30',
    };
    expect(wishOf(draft)).toEqual({
      problem: 'There is no 02:30 on 2026-03-29: the clocks are put forward over it. Choose another time.',
    });
  });
});

describe('a time that is shown', () => {
  it('has the name of the time on a day on which the clocks change, and on no other', () => {
    expect(whenText(Date.parse('2026-10-25T00:30Z'))).toBe('Sun 25 Oct, 02:30 CEST');
    expect(whenText(Date.parse('2026-10-25T01:30Z'))).toBe('Sun 25 Oct, 02:30 CET');
    expect(whenText(Date.parse('2026-10-25T19:00Z'))).toBe('Sun 25 Oct, 20:00 CET');
    expect(whenText(Date.parse('2026-10-24T18:00Z'))).toBe('Sat 24 Oct, 20:00');
    expect(whenText(Date.parse('2026-10-26T19:00Z'))).toBe('Mon 26 Oct, 20:00');
    expect(clockNote('2026-10-25T02:30')).toBe('The clocks change that day: Sun 25 Oct, 02:30 CET is meant.');
    expect(clockNote('2026-10-26T02:30')).toBe('');
    expect(clockNote('')).toBe('');
  });
});
