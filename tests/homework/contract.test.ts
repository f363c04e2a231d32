/** What reports are and what is said of them over HTTP are the same: by type, and by reports that were made. */
import { describe, expect, expectTypeOf, it } from 'vitest';
import type { z } from 'zod';
import * as told from '../../shared/homework-reports.ts';
import type { HomeworkWish } from '../../shared/homework-views.ts';
import type { Level } from '../../src/homework/index.ts';
import {
  type ClassReport,
  type CompetenceMatrix,
  classReport,
  competenceMatrix,
  type LearnerReport,
  learnerReport,
  type Refresher,
  refreshersDue,
  type ShownIdea,
  type TermReport,
  type Total,
  tellClassReport,
  tellLearnerReport,
  tellTermReport,
  termReport,
} from '../../src/homework/index.ts';
import { english } from '../../src/words/en/core.ts';
import { believing, notAtAll, rightly, work } from './class-work.ts';
import { course, OPENS, places, setOf } from './course.ts';

/** A type with everything in it readonly, all the way down. */
type Fixed<T> = T extends (infer E)[] | readonly (infer E)[]
  ? readonly Fixed<E>[]
  : T extends object
    ? { readonly [K in keyof T]: Fixed<T[K]> }
    : T;

type Told<S extends z.ZodType> = Fixed<z.output<S>>;
type Bare<S extends z.ZodType> = Omit<Told<S>, 'ideas' | 'lookAfter'>;

describe('the schemas of reports', () => {
  it('are the types of the reports', () => {
    expectTypeOf<Told<typeof told.paperTotal>>().toEqualTypeOf<Fixed<Total>>();
    // Ideas are told in words, which the reports themselves haven't got.
    expectTypeOf<Omit<Told<typeof told.shownIdea>, 'idea' | 'advice'>>().toEqualTypeOf<Fixed<ShownIdea>>();
    expectTypeOf<Bare<typeof told.learnerReport>>().toEqualTypeOf<Omit<Fixed<LearnerReport>, 'ideas'>>();
    expectTypeOf<Bare<typeof told.classReport>>().toEqualTypeOf<
      Omit<Fixed<ClassReport>, 'ideas' | 'lookAfter'>
    >();
    expectTypeOf<Bare<typeof told.termReport>>().toEqualTypeOf<Omit<Fixed<TermReport>, 'ideas'>>();
    expectTypeOf<Told<typeof told.competenceMatrix>>().toEqualTypeOf<Fixed<CompetenceMatrix>>();
    expectTypeOf<Told<typeof told.refresher>>().toEqualTypeOf<Fixed<Refresher>>();
    expectTypeOf<HomeworkWish['level']>().toEqualTypeOf<Level>();
  });

  it('take reports as they are made', () => {
    const set = setOf(places(['status-lamps', 'make-contact'], 4));
    const { papers, marks, learners } = work(set, [rightly, believing('make-for-break'), notAtAll]);
    const report = tellClassReport(
      english,
      classReport({ set, course, learners: [...learners, 'absent'], marks, papers }),
    );
    expect(told.classReport.parse(report)).toEqual(report);
    const term = tellTermReport(english, termReport({ course, learners, sets: [{ set, marks }] }));
    expect(told.termReport.parse(term)).toEqual(term);
    for (const mark of marks) {
      const own = tellLearnerReport(english, learnerReport(mark, course));
      expect(told.learnerReport.parse(own)).toEqual(own);
    }
    const attempt = {
      share: 1,
      parts: { asked: 8, right: 8, luck: 0.1 },
      help: { hint: false, explanation: false },
      secondsUsed: null,
      secondsExpected: 60,
    };
    const histories = [
      ['one', 'two', 'three'].map((circuit, day) => ({
        id: circuit,
        skill: 'make-contact',
        circuit,
        at: OPENS + 3 * day * 86_400_000,
        attempt,
      })),
    ];
    const matrix = competenceMatrix(course, [{ id: 'fern', histories }], OPENS + 400 * 86_400_000);
    expect(told.competenceMatrix.parse(matrix)).toEqual(matrix);
    const due = refreshersDue(matrix, OPENS + 400 * 86_400_000);
    expect(due).toHaveLength(1);
    expect(told.refresher.parse(due[0])).toEqual(due[0]);
  });
});
