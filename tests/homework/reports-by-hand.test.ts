/** What reports say of marks that were put together by hand: bounds, order, and who is told of. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  alpha,
  classReport,
  correlation,
  countingAttempt,
  discrimination,
  earnedOf,
  facility,
  ideasIn,
  learnerReport,
  type Scores,
  termReport,
  totalOf,
  upperLower,
} from '../../src/homework/index.ts';
import { type Given, markOf } from './by-hand.ts';
import { course, setOf } from './course.ts';

const place = (skill: string, marks = 2) => ({
  skill,
  kind: 'lamp-states' as const,
  families: ['make-only'],
  size: 2,
  difficulty: 3,
  marks,
});
const set = setOf(['make-contact', 'status-lamps', 'make-contact', 'seal-in'].map((skill) => place(skill)));
/** A paper of the set on which these shares are right. */
const shares = (learner: string, rights: readonly number[], more: readonly Given[] = []) =>
  markOf(
    learner,
    rights.map((share, at) => ({ skill: set.places[at]!.skill, share, ...more[at] })),
  );

describe('wrong ideas', () => {
  it('are counted where one idea alone explains an answer, and not where several do', () => {
    expect(ideasIn([markOf('fern', [{ ideas: ['a'] }, { ideas: ['a', 'b'] }, { ideas: [] }])])).toEqual([
      { id: 'a', times: 1, learners: ['fern'], shownIn: [{ learner: 'fern', item: 0 }] },
    ]);
  });

  it('stand by learners, then by answers, then by name', () => {
    const [one, two] = [{ ideas: ['one'] }, { ideas: ['two'] }];
    const many = { ideas: ['many'] };
    const marks = [
      markOf('fern', [two, many, many, many, { ideas: ['z'] }, { ideas: ['y'] }]),
      markOf('moss', [two, one, one]),
      markOf('sedge', [one]),
    ];
    expect(ideasIn(marks).map(({ id, times, learners }) => [id, times, learners.length])).toEqual([
      ['one', 3, 2],
      ['two', 2, 2],
      ['many', 3, 1],
      ['y', 1, 1],
      ['z', 1, 1],
    ]);
    expect(ideasIn(marks.toReversed()).map(({ id }) => id)).toEqual(['one', 'two', 'many', 'y', 'z']);
  });
});

describe('what an item earned', () => {
  const override = (earned: number) => ({ earned, reason: 'why', by: 'tutor', at: 0 });
  it('is its share of the marks, to a hundredth, or what the tutor gave last', () => {
    const earned = (given: Given) => earnedOf(markOf('fern', [given]).items[0]!);
    expect(earned({ share: 1 / 3, marks: 2 })).toBe(0.67);
    expect(earned({ share: 1 / 3, marks: 2, overrides: [override(2), override(1.5)] })).toBe(1.5);
    expect(earned({ share: 1, marks: 2, overrides: [override(0)] })).toBe(0);
  });

  it('adds up to a hundredth, whatever the shares', () => {
    const total = totalOf(markOf('fern', Array(7).fill({ share: 0.1, marks: 1 })));
    expect(total).toEqual({ earned: 0.7, outOf: 7, share: 0.7 / 7, answered: 7, items: 7 });
  });

  it('of an attempt counts where it has more marks than each before it', () => {
    const attempt = (number: number, share: number) => markOf('fern', [{ share }], number);
    const all = [attempt(3, 0.5), attempt(1, 0.25), attempt(2, 0.5)];
    expect(countingAttempt({ counts: 'best' }, all)?.attempt).toBe(2);
    expect(countingAttempt({ counts: 'last' }, all)?.attempt).toBe(3);
  });
});

describe('a learner’s report', () => {
  it('tells what to revise below three quarters of the marks, the weakest first, with the lesson', () => {
    const report = learnerReport(
      markOf('fern', [
        { skill: 'make-contact', share: 0.75 },
        { skill: 'status-lamps', share: 0.7 },
        { skill: 'relay-chains', share: 0 },
        { skill: 'seal-in', share: 1 },
        { skill: 'seal-in', share: 0.4 },
        { skill: 'of-another-bank', share: 0.5 },
      ]),
      course,
    );
    const topic = { id: 'nursery-panels', title: 'Nursery panels' };
    expect(report.revise).toEqual([
      { skill: 'relay-chains', title: 'Follow one relay that feeds another', share: 0, topic },
      { skill: 'of-another-bank', title: 'of-another-bank', share: 0.5, topic: null },
      { skill: 'status-lamps', title: 'Read a status pair', share: 0.7, topic },
      { skill: 'seal-in', title: 'Follow a relay that holds itself', share: 0.7, topic },
    ]);
    expect(report.skills.find(({ skill }) => skill === 'seal-in')).toEqual({
      skill: 'seal-in',
      title: 'Follow a relay that holds itself',
      earned: 2.8,
      outOf: 4,
      share: 0.7,
      items: 2,
    });
    expect(report).toMatchObject({ learner: 'fern', attempt: 1, total: { items: 6, outOf: 12 } });
  });
});

describe('a class report', () => {
  const report = (marks: ReturnType<typeof markOf>[], more = {}) =>
    classReport({ set, course, learners: ['fern', 'moss'], marks, ...more });
  const concerns = (given: Given[], more = {}) =>
    report([markOf('fern', given)], { learners: ['fern'], ...more }).lookAfter[0]?.concerns ?? [];
  const right = { share: 1 };
  const blank = { share: 0, answered: 'none' } as const;

  it('is concerned for who answered fewer than half of the items, and not for half of them', () => {
    expect(concerns([right, right, right, blank])).toEqual([]);
    expect(concerns([right, right, blank, blank])).toEqual([]);
    expect(concerns([right, { share: 0.9, answered: 'part' }, blank, blank])).toEqual([
      { kind: 'low-marks', share: 0.475 },
    ]);
    expect(concerns([{ marks: 9 }, blank, blank, blank])).toEqual([
      { kind: 'half-left-out', answered: 1, items: 4 },
    ]);
  });

  it('is concerned for fewer than half of the marks, and not for half of them', () => {
    expect(concerns([right, right, { share: 0 }, { share: 0 }])).toEqual([]);
    expect(concerns([right, { share: 0.99 }, { share: 0 }, { share: 0 }])).toEqual([
      { kind: 'low-marks', share: 0.4975 },
    ]);
  });

  it('is concerned for an idea that showed three times, and not for one that showed twice', () => {
    const wrong = (id: string) => ({ share: 0.8, ideas: [id] });
    expect(concerns([wrong('a'), wrong('a'), wrong('b'), right])).toEqual([]);
    expect(concerns([wrong('a'), wrong('a'), wrong('a'), right])).toEqual([
      { kind: 'firm-idea', id: 'a', times: 3 },
    ]);
  });

  it('is concerned for who handed in nothing, unless it waits to be marked', () => {
    expect(report([]).lookAfter).toEqual([
      { learner: 'fern', concerns: [{ kind: 'nothing-handed-in' }] },
      { learner: 'moss', concerns: [{ kind: 'nothing-handed-in' }] },
    ]);
    expect(report([], { waiting: ['moss'] }).lookAfter.map(({ learner }) => learner)).toEqual(['fern']);
  });

  it('has each skill once, in the order of the set, with the mean of those who handed in', () => {
    const { skills, rows } = report([shares('moss', [1, 0.5, 0, 1]), shares('fern', [1, 1, 1, 0])]);
    expect(skills).toEqual([
      { skill: 'make-contact', title: 'Follow a make contact', share: 0.75 },
      { skill: 'status-lamps', title: 'Read a status pair', share: 0.75 },
      { skill: 'seal-in', title: 'Follow a relay that holds itself', share: 0.5 },
    ]);
    expect(rows.map(({ learner, shares }) => [learner, shares])).toEqual([
      ['fern', [1, 1, 0]],
      ['moss', [0.5, 0.5, 1]],
    ]);
    expect(report([]).skills.map(({ share }) => share)).toEqual([null, null, null]);
  });

  it('has the places by number, with how many left each out', () => {
    const marks = [
      shares('fern', [1, 0.5, 1, 0], [{}, {}, {}, { answered: 'none' }]),
      shares('moss', [1, 0, 1, 0], [{}, { answered: 'part' }, {}, { answered: 'none' }]),
    ];
    expect(
      report(marks).places.map(({ place, skill, facility, leftOut }) => [place, skill, facility, leftOut]),
    ).toEqual([
      [1, 'make-contact', 1, 0],
      [2, 'status-lamps', 0.25, 0],
      [3, 'make-contact', 1, 0],
      [4, 'seal-in', 0, 2],
    ]);
  });

  it('takes its figures from what was earned by those of the class alone', () => {
    const strong = [1, 1, 1, 1].map((share) => share);
    const marks = [
      shares('fern', strong),
      shares('moss', [1, 0, 0, 0]),
      shares('sedge', [0.5, 0.5, 0.5, 0]),
      shares('reed', [1, 1, 0, 0]),
      shares('stranger', [0, 1, 0, 1]),
    ];
    const learners = ['fern', 'moss', 'sedge', 'reed'];
    const made = report(marks, { learners });
    const scores = marks.slice(0, 4).map(({ items }) => items.map(earnedOf));
    expect(made.alpha).toBe(alpha(scores));
    for (const [at, found] of made.places.entries())
      expect(found).toMatchObject({
        facility: facility(scores, at, 2),
        discrimination: discrimination(scores, at),
        upperLower: upperLower(scores, at, 2),
      });
    expect([made.handedIn, made.learners]).toEqual([4, 4]);
  });
});

describe('a report over several sets', () => {
  it('has the ideas of those of the class over all sets, and says not where they showed', () => {
    const second = { ...set, id: 'week-41', places: [place('relay-chains'), place('seal-in')] };
    const wrong = { share: 0, ideas: ['a'] };
    const term = termReport({
      course,
      learners: ['fern', 'moss'],
      sets: [
        { set, marks: [shares('fern', [0, 1, 1, 0.5], [wrong]), shares('stranger', [0], [wrong])] },
        {
          set: second,
          marks: [
            markOf('fern', [
              { skill: 'relay-chains', ...wrong },
              { skill: 'seal-in', marks: 4 },
            ]),
          ],
        },
      ],
    });
    expect(term.ideas).toEqual([{ id: 'a', times: 2, learners: ['fern'] }]);
    expect(term.skills).toEqual([
      { skill: 'make-contact', title: 'Follow a make contact' },
      { skill: 'status-lamps', title: 'Read a status pair' },
      { skill: 'seal-in', title: 'Follow a relay that holds itself' },
      { skill: 'relay-chains', title: 'Follow one relay that feeds another' },
    ]);
    expect(term.rows).toEqual([
      { learner: 'fern', bySet: [0.625, 4 / 6], bySkill: [0.5, 1, 5 / 6, 0] },
      { learner: 'moss', bySet: [null, null], bySkill: [null, null, null, null] },
    ]);
  });
});

/** The best and the weakest group by hand: each place of a group taken by the next in order, ties in equal parts. */
function groupMean(scores: Scores, item: number, size: number, best: boolean): number {
  const total = (row: readonly number[]): number => row.reduce((sum, value) => sum + value, 0);
  const weights = scores.map((row) => {
    const before = scores.filter((other) => (best ? total(other) > total(row) : total(other) < total(row)));
    const alike = scores.filter((other) => total(other) === total(row));
    return Math.max(0, Math.min(1, (size - before.length) / alike.length));
  });
  return scores.reduce((sum, row, at) => sum + weights[at]! * row[item]!, 0) / size;
}

describe('figures of a set', () => {
  const table = fc
    .tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 14 }))
    .chain(([width, height]) =>
      fc.array(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: width, maxLength: width }), {
        minLength: height,
        maxLength: height,
      }),
    );

  it('compare the best 27 % with the weakest, those of one total in equal parts', () => {
    fc.assert(
      fc.property(table, fc.constantFrom(undefined, 0.1, 0.5), (scores, share) => {
        const totals = new Set(scores.map((row) => row.reduce((sum, value) => sum + value, 0)));
        const size = Math.max(1, Math.round((share ?? 0.27) * scores.length));
        for (const item of scores[0]?.keys() ?? []) {
          const found = upperLower(scores, item, 3, share);
          if (scores.length < 4 || totals.size < 2) expect(found).toBeNull();
          else
            expect(found).toBeCloseTo(
              (groupMean(scores, item, size, true) - groupMean(scores, item, size, false)) / 3,
              9,
            );
        }
      }),
      { numRuns: 300 },
    );
  });

  it('are defined from three learners on for a correlation, and from two learners and two items on for alpha', () => {
    expect(correlation([1, 2], [1, 2])).toBeNull();
    expect(correlation([1, 2, 3], [1, 2, 3])).toBeCloseTo(1, 12);
    expect(correlation([1, 2, 3], [3, 2, 1])).toBeCloseTo(-1, 12);
    expect(correlation([1, 2, 3], [2, 2, 2])).toBeNull();
    expect(correlation([2, 2, 2], [1, 2, 3])).toBeNull();
    expect(alpha([[1], [2], [3]])).toBeNull();
    expect(alpha([[1, 2]])).toBeNull();
    expect(
      alpha([
        [1, 1],
        [2, 2],
      ]),
    ).toBeCloseTo(1, 12);
    expect(
      alpha([
        [1, 2],
        [2, 1],
      ]),
    ).toBeNull();
  });

  it('never leave their bounds by a rounding', () => {
    const scores = Array.from({ length: 9 }, (_, at) => [0.1 * at, 0.3 * at]);
    for (const item of [0, 1]) expect(Math.abs(discrimination(scores, item)!)).toBeLessThanOrEqual(1);
  });

  it('have the share of the full marks as facility, and none without learners', () => {
    expect(facility([[1], [2], [3]], 0, 4)).toBe(0.5);
    expect(facility([], 0, 4)).toBeNull();
  });
});
