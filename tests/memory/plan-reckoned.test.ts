/** What a plan reckons with, against the same reckoned slowly, review by review and choice by choice, by the library's formulas. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Recall } from '../../shared/memory.ts';
import { planBeginnings } from '../../src/memory/begin.ts';
import { Course } from '../../src/memory/course.ts';
import { CERTAIN, planDeepening } from '../../src/memory/deepen.ts';
import { TARGET } from '../../src/memory/index.ts';
import { chanceAfter, daysUntil, type Memory, memoryAfter } from '../../src/memory/model.ts';
import { arbitraryGrade, DAY, reviewAs, START, skill } from './arbitraries.ts';

interface Case {
  readonly weight: number;
  readonly memory: Memory;
}

/** One more review after so many days: right with its chance, or lost; what was lost in it is one case. */
function reviewed(cases: readonly Case[], gap: number): readonly Case[] {
  const parts = cases.map(({ weight, memory }) => {
    const chance = chanceAfter(gap, memory.stability);
    return {
      kept: { weight: weight * chance, memory: memoryAfter(memory, gap, 'firm') },
      lost: { weight: weight * (1 - chance), memory: memoryAfter(memory, gap, 'lost') },
    };
  });
  const lost = parts.reduce((sum, part) => sum + part.lost.weight, 0);
  const mean = (of: (memory: Memory) => number): number =>
    parts.reduce((sum, part) => sum + part.lost.weight * of(part.lost.memory), 0) / lost;
  const fallen = {
    weight: lost,
    memory: {
      stability: Math.exp(mean(({ stability }) => Math.log(stability))),
      difficulty: mean(({ difficulty }) => difficulty),
    },
  };
  return [...parts.map(({ kept }) => kept), ...(lost < 1e-9 ? [] : [fallen])];
}

/** The chance on day `on` of a skill that is practised on these days. */
function chanceOn(start: Course['start'], days: readonly number[], on: number): number {
  const until = days.toSorted((one, other) => one - other).filter((day) => day <= on);
  if (start.memory === null && until.length === 0) return 0;
  let last = start.memory === null ? until.shift()! : start.last;
  let cases: readonly Case[] = [{ weight: 1, memory: start.memory ?? memoryAfter(null, 0, 'shaky') }];
  for (const day of until) {
    cases = reviewed(cases, Math.max(0, day - last));
    last = day;
  }
  return cases.reduce(
    (sum, { weight, memory }) => sum + weight * chanceAfter(Math.max(0, on - last), memory.stability),
    0,
  );
}

/** Whether each review from that day on is a day, and a fifth of what is left or until it is due, after the one before. */
function spaced(start: Course['start'], days: readonly number[], day: number, on: number, target: number) {
  const all = [...days, day].toSorted((one, other) => one - other);
  let memory = start.memory ?? memoryAfter(null, 0, 'shaky');
  let last = start.memory === null ? all.shift()! : start.last;
  for (const next of all) {
    const gap = next - last;
    // Six hours more or less don't matter.
    const far =
      gap + 0.25 >= Math.max(1, (on - next) / 5) || gap + 0.25 >= daysUntil(target, memory.stability);
    if (next >= day && !far) return false;
    memory = memoryAfter(memory, Math.max(0, gap), 'firm');
    last = next;
  }
  return true;
}

/** After some reviews, the last of them up to forty days ago. */
const arbitraryRecall: fc.Arbitrary<Recall> = fc
  .array(fc.tuple(arbitraryGrade, fc.integer({ min: 0, max: 40 * 24 })), { maxLength: 4 })
  .map((reviews) =>
    reviews.reduce<Recall>(
      (recall, [grade], index) => {
        const hours = reviews.slice(index).reduce((sum, [, more]) => sum + more, 0);
        return reviewAs(recall, grade, START - hours * 3_600_000, `c${index}`);
      },
      { kind: 'new' },
    ),
  );

const arbitraryDays = fc.uniqueArray(fc.integer({ min: 0, max: 40 }), { maxLength: 7 });
const courseOf = (recall: Recall, days: readonly number[] = []): Course => {
  const course = new Course(skill('s'), new Map(recall.kind === 'new' ? [] : [['s', recall]]), START);
  for (const day of days) course.add(day);
  return course;
};

describe('what is expected of a skill', () => {
  it('is what follows review by review, in whatever order its days were planned', () => {
    fc.assert(
      fc.property(
        arbitraryRecall,
        arbitraryDays,
        fc.double({ min: 0, max: 50, noNaN: true }),
        (recall, days, on) => {
          const course = courseOf(recall, days);
          expect(course.prospect(on)).toBeCloseTo(chanceOn(course.start, days, on), 6);
          expect(course.days).toEqual(days.toSorted((one, other) => one - other));
        },
      ),
      { numRuns: 300 },
    );
  });

  it('is reckoned with while it is planned: each day more is what it would be with it', () => {
    fc.assert(
      fc.property(arbitraryRecall, arbitraryDays, fc.integer({ min: 0, max: 50 }), (recall, days, on) => {
        const course = courseOf(recall);
        const planned: number[] = [];
        for (const day of days) {
          const isFirst = course.start.memory === null && day <= Math.min(...planned);
          if (!isFirst && day <= on)
            expect(course.prospectWith(day, on)).toBeCloseTo(
              chanceOn(course.start, [...planned, day], on),
              6,
            );
          course.add(day);
          planned.push(day);
          expect(course.prospect(on)).toBeCloseTo(chanceOn(course.start, planned, on), 6);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('is spaced where each of its days is far enough from the one before', () => {
    fc.assert(
      fc.property(
        arbitraryRecall,
        arbitraryDays,
        fc.integer({ min: 0, max: 40 }),
        fc.constantFrom(0.8, TARGET, 0.97),
        (recall, days, day, target) => {
          const course = courseOf(recall, days);
          fc.pre(!days.includes(day) && (recall.kind !== 'new' || day > Math.min(...days)));
          expect(course.isSpacedWith(day, 45, target)).toBe(spaced(course.start, days, day, 45, target));
        },
      ),
      { numRuns: 500 },
    );
  });

  it('takes two circuits to prove, less what has proven it so far', () => {
    expect(courseOf({ kind: 'new' })).toMatchObject({ opening: 2, isOpened: false });
    const once = reviewAs({ kind: 'new' }, 'firm', START - DAY, 'c1');
    expect(courseOf(once)).toMatchObject({ opening: 1, isOpened: false, start: { last: -1 } });
    expect(courseOf(reviewAs(once, 'firm', START, 'c2'))).toMatchObject({ opening: 0, isOpened: true });
    expect(courseOf(once, [3]).isOpened).toBe(true);
    // A clock that ran ahead: it was reviewed now.
    expect(courseOf(reviewAs({ kind: 'new' }, 'firm', START + DAY, 'c1')).start.last).toBe(0);
  });

  it('is asked what proves it on its first day, and once on the others', () => {
    const course = courseOf({ kind: 'new' });
    expect(course.questionsOn(7)).toBe(2);
    course.add(3);
    course.add(5);
    expect([3, 5, 7].map((day) => course.questionsOn(day))).toEqual([2, 1, 1]);
  });
});

/** Each free question goes where it raises a chance most; of equal gains the first skill's and the earlier day. */
function deepenSlowly(courses: readonly Course[], free: number[], on: number, target: number): void {
  for (;;) {
    let best: { course: Course; day: number; gain: number } | undefined;
    for (const course of courses) {
      if (!course.isOpened || course.prospect(on) >= CERTAIN) continue;
      for (const [day, left] of free.entries()) {
        if (left < 1 || course.days.includes(day) || (course.opening > 0 && day < course.days[0]!)) continue;
        if (!course.isSpacedWith(day, on, target)) continue;
        const gain = course.prospectWith(day, on) - course.prospect(on);
        if (gain > 1e-5 && (!best || gain > best.gain)) best = { course, day, gain };
      }
    }
    if (!best) return;
    best.course.add(best.day);
    free[best.day]! -= 1;
  }
}

describe('the further questions of a plan', () => {
  it('go where each helps most, one after the other, until the days are full or nothing helps', () => {
    const arbitraryCourse = fc.tuple(arbitraryRecall, fc.option(fc.integer({ min: 0, max: 9 }), { freq: 4 }));
    fc.assert(
      fc.property(
        fc.array(arbitraryCourse, { minLength: 1, maxLength: 4 }),
        fc.array(fc.nat(2), { minLength: 1, maxLength: 12 }),
        (made, free) => {
          // One that isn't proven is begun on some day, or isn't at all.
          const courses = () =>
            made.map(([recall, begun]) => courseOf(recall, begun === null ? [] : [begun]));
          const [quick, slow] = [courses(), courses()];
          const [quickly, slowly] = [[...free], [...free]];
          planDeepening(quick, quickly, free.length, TARGET);
          deepenSlowly(slow, slowly, free.length, TARGET);
          expect(quick.map(({ days }) => days)).toEqual(slow.map(({ days }) => days));
          expect(quickly).toEqual(slowly);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('the first days of new skills', () => {
  const long = reviewAs(
    reviewAs({ kind: 'new' }, 'firm', START - 20 * DAY, 'c1'),
    'firm',
    START - 20 * DAY,
    'c2',
  );
  const graph = [skill('a'), skill('b'), skill('c'), skill('next', 'a')];
  /** With so many questions a day, where only a was begun, twenty days ago. */
  const begun = (free: number[], changes: { newADay?: number; begunToday?: number } = {}) => {
    const courses = graph.map((each) => new Course(each, new Map([['a', long]]), START));
    const limits = { questionsADay: free[0]!, newADay: 9, begunToday: 0, target: TARGET, ...changes };
    planBeginnings(courses, { free, ...limits });
    return { days: courses.map(({ days }) => days), free };
  };

  it('have room for what they stand on, which is practised first where it is half forgotten', () => {
    // Two for b, two for c, and three for a and what stands on it.
    expect(begun([7, 7])).toEqual({ days: [[0], [0], [0], [0]], free: [0, 7] });
  });

  it('are the next ones where a day is too full for all of it, and nothing is practised for them before', () => {
    expect(begun([6, 6])).toEqual({ days: [[1], [0], [0], [1]], free: [2, 3] });
  });

  it('are later where no day has room for all of it: what they stand on comes first, as far as a day goes', () => {
    expect(begun([2, 2, 2, 2])).toEqual({ days: [[2], [0], [1], [3]], free: [0, 0, 1, 0] });
  });

  it('are as few as may be begun in a day, today less those begun already', () => {
    expect(begun([9, 9, 9], { newADay: 2, begunToday: 1 }).days).toEqual([[1], [0], [1], [1]]);
    expect(begun([9, 9, 9], { newADay: 1 }).days).toEqual([[2], [0], [1], [2]]);
  });
});
