import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Grade, type Recall, recall as recallSchema } from '../../shared/memory.ts';
import {
  dueAt,
  isDue,
  isHeld,
  isProven,
  newRecall,
  retrievability,
  review,
  TARGET,
} from '../../src/memory/index.ts';
import { arbitraryMoment, arbitraryReview, DAY, START } from './arbitraries.ts';

const reviewed = (reviews: readonly (readonly [Grade, number, string])[]): Recall =>
  reviews.reduce<Recall>((recall, [grade, at, circuit]) => review(recall, grade, at, circuit), newRecall());

const arbitraryRecall = fc
  .array(arbitraryReview, { minLength: 1, maxLength: 12 })
  .map((reviews) => reviewed(reviews.map(({ grade, at, circuit }) => [grade, at, circuit])));

describe('recall', () => {
  it('starts new: never remembered, never due, not held', () => {
    const recall = newRecall();
    expect(recall).toEqual({ kind: 'new' });
    expect(retrievability(recall, START)).toBe(0);
    expect(dueAt(recall)).toBeNull();
    expect(isDue(recall, START)).toBe(false);
    expect(isHeld(recall, START)).toBe(false);
  });

  it('keeps when it was begun, counts reviews, and counts as lapses only what was lost after that', () => {
    const recall = reviewed([
      ['lost', START, 'c1'],
      ['firm', START + DAY, 'c2'],
      ['lost', START + 2 * DAY, 'c3'],
      ['shaky', START + 3 * DAY, 'c4'],
    ]);
    expect(recall).toMatchObject({
      firstAt: START,
      lastAt: START + 3 * DAY,
      reviews: 4,
      lapses: 1,
    });
  });

  it('keeps its shape, is frozen and survives JSON after any reviews at any moments', () => {
    fc.assert(
      fc.property(arbitraryRecall, (recall) => {
        expect(Object.isFrozen(recall)).toBe(true);
        expect(recallSchema.parse(JSON.parse(JSON.stringify(recall)))).toEqual(recall);
      }),
    );
  });

  it('leaves the state before a review as it was', () => {
    const before = reviewed([['firm', START, 'c1']]);
    const copy = structuredClone(before);
    review(before, 'sure', START + DAY, 'c2');
    expect(before).toEqual(copy);
  });

  it('takes a review that the clock puts before the last one as following at once, and keeps its moment', () => {
    const ahead = review(newRecall(), 'firm', START + 900 * DAY, 'c1');
    const putRight = review(ahead, 'firm', START, 'c2');
    const atOnce = review(ahead, 'firm', START + 900 * DAY, 'c2');
    expect(putRight).toEqual({ ...atOnce, lastAt: START });
    expect(retrievability(putRight, START + DAY)).toBeLessThan(1);
  });

  it('reads 1 at a moment before the last review', () => {
    expect(retrievability(reviewed([['lost', START, 'c1']]), START - 5 * DAY)).toBe(1);
  });

  it('is due when its last review lies in what now is the future', () => {
    const ahead = reviewed([['sure', START + 900 * DAY, 'c1']]);
    expect(isDue(ahead, START)).toBe(true);
  });

  it('isn’t due for a moment that a clock may be ahead by, six hours', () => {
    const recall = reviewed([['sure', START, 'c1']]);
    expect(isDue(recall, START - 6 * 3_600_000)).toBe(false);
    expect(isDue(recall, START - 6 * 3_600_000 - 1)).toBe(true);
  });

  it('is due from six hours before its moment, so that practice at about the same hour finds it', () => {
    const recall = reviewed([['firm', START, 'c1']]);
    const due = dueAt(recall)!;
    expect(isDue(recall, due - 7 * 3_600_000)).toBe(false);
    expect(isDue(recall, due - 6 * 3_600_000)).toBe(true);
    expect(isDue(recall, due + 100 * DAY)).toBe(true);
  });

  it('never comes back on the day it was practised, whatever the grade', () => {
    fc.assert(
      fc.property(arbitraryRecall, arbitraryReview, (recall, { grade, circuit }) => {
        const at = START + 900 * DAY;
        const after = review(recall, grade, at, circuit);
        expect(dueAt(after)!).toBeGreaterThanOrEqual(at + DAY);
        expect(isDue(after, at + 17 * 3_600_000)).toBe(false);
      }),
    );
  });

  it('falls with time and stays between 0 and 1', () => {
    fc.assert(
      fc.property(arbitraryRecall, arbitraryMoment, fc.nat({ max: 4000 * DAY }), (recall, at, later) => {
        const now = retrievability(recall, at);
        const then = retrievability(recall, at + later);
        expect(then).toBeLessThanOrEqual(now);
        expect(then).toBeGreaterThan(0);
        expect(now).toBeLessThanOrEqual(1);
      }),
    );
  });

  it('comes back later, or at the same time, the better the grade', () => {
    fc.assert(
      fc.property(arbitraryRecall, arbitraryReview, (recall, { at, circuit }) => {
        const grades: readonly Grade[] = ['lost', 'shaky', 'firm', 'sure'];
        const dues = grades.map((grade) => dueAt(review(recall, grade, at, circuit))!);
        expect(dues).toEqual(dues.toSorted((one, other) => one - other));
      }),
    );
  });

  it('comes back sooner the higher the target, and on whole days', () => {
    fc.assert(
      fc.property(
        arbitraryRecall,
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (recall, one, other) => {
          const later = dueAt(recall, Math.min(one, other))!;
          const sooner = dueAt(recall, Math.max(one, other))!;
          expect(sooner).toBeLessThanOrEqual(later);
          expect(recall.kind === 'begun' && (later - recall.lastAt) % DAY).toBe(0);
        },
      ),
    );
  });

  it('has fallen to about the target when it is due', () => {
    const recall = reviewed([
      ['sure', START, 'c1'],
      ['firm', START + 8 * DAY, 'c2'],
    ]);
    for (const target of [0.8, 0.9, 0.95])
      expect(retrievability(recall, dueAt(recall, target)!)).toBeCloseTo(target, 2);
  });

  it.each([0, -1, 1.01, Number.NaN])('refuses a target of %d', (target) => {
    expect(() => dueAt(reviewed([['firm', START, 'c1']]), target)).toThrow(RangeError);
  });
});

describe('held', () => {
  it('takes two different circuits, answered firm or sure', () => {
    expect(isProven(reviewed([['sure', START, 'c1']]))).toBe(false);
    expect(
      isProven(
        reviewed([
          ['sure', START, 'c1'],
          ['sure', START, 'c1'],
        ]),
      ),
    ).toBe(false);
    expect(
      isProven(
        reviewed([
          ['sure', START, 'c1'],
          ['shaky', START, 'c2'],
        ]),
      ),
    ).toBe(false);
    expect(
      isProven(
        reviewed([
          ['sure', START, 'c1'],
          ['firm', START, 'c2'],
        ]),
      ),
    ).toBe(true);
  });

  it('stays proven when a later answer is shaky, and on the circuits that proved it', () => {
    const proved: (readonly [Grade, number, string])[] = [
      ['firm', START, 'c1'],
      ['sure', START, 'c2'],
    ];
    const later = reviewed([...proved, ['shaky', START, 'c3'], ['firm', START, 'c4']]);
    expect(isProven(later)).toBe(true);
    expect(later).toMatchObject({ provenOn: ['c1', 'c2'] });
  });

  it('is proven afresh after it was lost', () => {
    const lost = reviewed([
      ['firm', START, 'c1'],
      ['firm', START, 'c2'],
      ['lost', START + DAY, 'c3'],
    ]);
    expect(isProven(lost)).toBe(false);
    const once = review(lost, 'firm', START + DAY, 'c1');
    expect(isProven(once)).toBe(false);
    expect(isHeld(review(once, 'firm', START + DAY, 'c4'), START + DAY)).toBe(true);
  });

  it('ends when the chance of a right answer falls below the target', () => {
    const recall = reviewed([
      ['firm', START, 'c1'],
      ['firm', START, 'c2'],
    ]);
    expect(isHeld(recall, START)).toBe(true);
    const later = START + 3 * DAY;
    expect(retrievability(recall, later)).toBeLessThan(TARGET);
    expect(isHeld(recall, later)).toBe(false);
    expect(isHeld(recall, later, 0.8)).toBe(true);
  });
});
