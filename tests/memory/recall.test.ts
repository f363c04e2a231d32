import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Grade, type Recall, recall as recallSchema } from '../../shared/memory.ts';
import {
  dueAt,
  isDue,
  isHeld,
  isProven,
  isShown,
  newRecall,
  retrievability,
  review,
  TARGET,
} from '../../src/memory/index.ts';
import { carries } from '../../src/memory/recall.ts';
import { arbitraryMoment, arbitraryReview, DAY, reviewAs, START } from './arbitraries.ts';

const reviewed = (reviews: readonly (readonly [Grade, number, string])[]): Recall =>
  reviews.reduce<Recall>((recall, [grade, at, circuit]) => reviewAs(recall, grade, at, circuit), newRecall());

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
    reviewAs(before, 'sure', START + DAY, 'c2');
    expect(before).toEqual(copy);
  });

  it('takes a review that the clock puts before the last one as following at once, and keeps its moment', () => {
    const ahead = reviewAs(newRecall(), 'firm', START + 900 * DAY, 'c1');
    const putRight = reviewAs(ahead, 'firm', START, 'c2');
    const atOnce = reviewAs(ahead, 'firm', START + 900 * DAY, 'c2');
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
        const after = reviewAs(recall, grade, at, circuit);
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
        const dues = grades.map((grade) => dueAt(reviewAs(recall, grade, at, circuit))!);
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
  const three: readonly (readonly [Grade, number, string])[] = [
    ['firm', START, 'c1'],
    ['sure', START, 'c2'],
    ['firm', START, 'c3'],
  ];

  it('takes answers on different circuits that are together a hundred times as likely as luck', () => {
    const first = (count: number): Recall => reviewed(three.slice(0, count));
    expect([0, 1, 2, 3].map((count) => isShown(first(count)))).toEqual([false, false, true, true]);
    expect([0, 1, 2, 3].map((count) => isProven(first(count)))).toEqual([false, false, false, true]);
    expect(isHeld(first(3), START)).toBe(true);
  });

  it('counts the same circuit once, and a shaky answer never for it', () => {
    const same = three.map(([grade, at]) => [grade, at, 'c1'] as const);
    expect(isShown(reviewed([...same, ...same]))).toBe(false);
    const once = reviewed([three[0]!]);
    const weight = (recall: Recall): number => (recall.kind === 'begun' ? recall.evidence : 0);
    expect(weight(reviewAs(once, 'firm', START, 'c1'))).toBeCloseTo(weight(once) + 1 / 6, 9);
    // All right with help: nothing for it, and nothing against it.
    const helped = review(once, { grade: 'shaky', at: START, circuit: 'c2', share: 1, ratio: 9 });
    expect(weight(helped)).toBeCloseTo(weight(once) + 1 / 6, 9);
    expect(
      weight(review(once, { grade: 'lost', at: START, circuit: 'c1', share: 0, ratio: 0.1 })),
    ).toBeLessThan(0.5);
  });

  it('knows a circuit that was answered wrongly as well', () => {
    const lost = reviewed([['lost', START, 'c1']]);
    expect(isShown(reviewAs(reviewAs(lost, 'sure', START, 'c1'), 'sure', START, 'c1'))).toBe(false);
  });

  it('remembers the last twenty circuits, each once', () => {
    const names = Array.from({ length: 30 }, (_, at) => `c${at}`);
    const long = reviewed([...names, 'c25'].map((name) => ['firm', START, name]));
    expect(long.kind === 'begun' && long.circuits).toEqual([
      ...names.slice(10).filter((name) => name !== 'c25'),
      'c25',
    ]);
  });

  it('stays proven when a later answer is shaky', () => {
    const later = reviewed([...three, ['shaky', START, 'c4'], ['firm', START, 'c5']]);
    expect(isProven(later)).toBe(true);
  });

  it('is proven afresh after it was lost', () => {
    const lost = reviewed([...three, ['lost', START + DAY, 'c4']]);
    expect(isProven(lost)).toBe(false);
    const again = reviewAs(lost, 'firm', START + DAY, 'c1');
    expect(isProven(again)).toBe(false);
    expect(isHeld(reviewAs(again, 'firm', START + DAY, 'c5'), START + DAY)).toBe(true);
  });

  it('says how many answers in a row were lost', () => {
    const lostOf = (...grades: Grade[]): number => {
      const recall = reviewed(grades.map((grade, at) => [grade, START, `c${at}`]));
      return recall.kind === 'begun' ? recall.lostLately : 0;
    };
    expect(lostOf('firm')).toBe(0);
    expect(lostOf('lost', 'lost', 'shaky', 'lost')).toBe(1);
    expect(lostOf('lost', 'lost')).toBe(2);
  });

  it('ends when the chance of a right answer falls below the target, and so does what carries others', () => {
    const recall = reviewed(three);
    expect(isHeld(recall, START)).toBe(true);
    const later = START + 3 * DAY;
    expect(retrievability(recall, later)).toBeLessThan(TARGET);
    expect(isHeld(recall, later)).toBe(false);
    expect(isHeld(recall, later, 0.8)).toBe(true);
    expect(carries(recall, START)).toBe(true);
    expect(carries(recall, later)).toBe(false);
  });
});
