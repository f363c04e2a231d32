import { describe, expect, it } from 'vitest';
import { mayRemember, nextAttempt, type PaperTimes, paperStateOf } from '../../src/homework/index.ts';
import { CLOSES, OPENS, setOf } from './course.ts';

const set = setOf([], { attempts: 2 });
const times = (changes: Partial<PaperTimes> = {}): PaperTimes => ({
  begunAt: null,
  submittedAt: null,
  markedAt: null,
  saves: 0,
  ...changes,
});

describe('where a paper stands', () => {
  it.each([
    ['made and not begun', {}, OPENS, 'made'],
    ['begun', { begunAt: OPENS }, OPENS + 1, 'working'],
    ['begun, a millisecond before closing', { begunAt: OPENS, saves: 3 }, CLOSES - 1, 'working'],
    ['closed with answers saved', { begunAt: OPENS, saves: 3 }, CLOSES, 'handed-in'],
    ['closed with one', { begunAt: OPENS, saves: 1 }, CLOSES, 'handed-in'],
    ['closed with none', { begunAt: OPENS }, CLOSES, 'nothing'],
    ['closed before it was begun', {}, CLOSES, 'nothing'],
    ['submitted', { begunAt: OPENS, submittedAt: OPENS + 5 }, OPENS + 6, 'handed-in'],
    ['submitted with nothing in it', { submittedAt: OPENS + 5 }, CLOSES, 'handed-in'],
    ['marked, and then the clock set back', { saves: 1, markedAt: CLOSES }, OPENS, 'handed-in'],
  ] as const)('%s', (_, changes, at, standing) => {
    expect(paperStateOf(set, times(changes), at)).toBe(standing);
  });
});

describe('the next attempt', () => {
  const paper = (attempt: number, changes: Partial<PaperTimes> = {}) => ({ attempt, ...times(changes) });
  const handedIn = { begunAt: OPENS, submittedAt: OPENS + 1 };

  it('is the first, then the one that goes on, then the second, then none', () => {
    expect(nextAttempt(set, [], OPENS)).toEqual({ begin: 1 });
    const first = paper(1, { begunAt: OPENS });
    expect(nextAttempt(set, [first], OPENS)).toEqual({ goOn: first });
    expect(nextAttempt(set, [paper(1, handedIn)], OPENS)).toEqual({ begin: 2 });
    // An attempt that was closed with nothing in it is no attempt more.
    expect(nextAttempt({ ...set, attempts: 1 }, [paper(1, handedIn)], OPENS)).toBeNull();
    expect(nextAttempt(set, [first], CLOSES)).toEqual({ goOn: first });
    const second = paper(2);
    expect(nextAttempt(set, [second, paper(1, handedIn)], OPENS)).toEqual({ goOn: second });
    expect(nextAttempt(set, [paper(2, handedIn), paper(1, handedIn)], OPENS)).toBeNull();
  });
});

describe('what was handed in', () => {
  it.each([
    ['after-submitting', true, true],
    ['after-closing', false, true],
    ['never', false, true],
  ] as const)(
    'goes to the memory, with review %s, while open: %s, after closing: %s',
    (review, open, closed) => {
      expect(mayRemember({ ...set, review }, CLOSES - 1)).toBe(open);
      expect(mayRemember({ ...set, review }, CLOSES)).toBe(closed);
    },
  );
});
