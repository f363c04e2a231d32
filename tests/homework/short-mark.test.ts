/** Reports from short marks are those from whole ones. */
import { describe, expect, it } from 'vitest';
import {
  classReport,
  markFromShort,
  overrideMark,
  shortMark,
  termReport,
  totalOf,
} from '../../src/homework/index.ts';
import { hopsOf } from '../../src/homework/marking/short-mark.ts';
import { believing, notAtAll, rightly, work } from './class-work.ts';
import { course, OPENS, places, setOf } from './course.ts';

const set = setOf(places(['status-lamps', 'make-contact', 'controller-inputs'], 6));
const worked = work(set, [
  rightly,
  believing('make-for-break'),
  notAtAll,
  (question, item) => (item % 2 === 0 ? rightly(question, item) : undefined),
]);
const marks = worked.marks.map((mark, at) => {
  const changed = overrideMark(mark, at, { earned: 0.75, reason: 'why', by: 'tutor', at: OPENS });
  if (!changed.ok) throw new Error(JSON.stringify(changed.problems));
  return changed.value;
});
/** As they come back from where they were kept. */
const short = marks.map((mark, at) => JSON.parse(JSON.stringify(shortMark(worked.papers[at]!, mark))));
const again = marks.map((mark, at) => markFromShort(set, mark, short[at]));

describe('a short mark', () => {
  it('has the total of the whole one, overrides included, and the sizes of the drawings', () => {
    expect(again.map(totalOf)).toEqual(marks.map(totalOf));
    expect(short[1].map(([, , , hops]: number[]) => hops)).toEqual(worked.papers[1]!.items.map(hopsOf));
    expect(short[2].map(([, , overrides]: number[]) => overrides)).toEqual([0, 0, 1, 0, 0, 0]);
  });

  it('leads to the same reports', () => {
    const { learners } = worked;
    const of = (some: typeof marks) => classReport({ set, course, learners, marks: some });
    expect(of(again)).toEqual(of(marks));
    const term = (some: typeof marks) => termReport({ course, learners, sets: [{ set, marks: some }] });
    expect(term(again)).toEqual(term(marks));
    expect(of(marks).ideas.length).toBeGreaterThan(0);
  });

  it('is a twentieth of the whole one', () => {
    expect(JSON.stringify(short[1]).length * 20).toBeLessThan(JSON.stringify(marks[1]).length);
  });
});
