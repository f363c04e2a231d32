/** What several sets say of a class together: each learner's way from set to set, and every skill over all of them. */
import type { HomeworkSet, PaperMark } from '../../../shared/homework.ts';
import type { Course } from '../../practice/index.ts';
import { totalOf } from '../marking/totals.ts';
import { ideasIn, type ShownIdea } from './ideas.ts';
import { skillMarks } from './learner-report.ts';

export interface TermWork {
  readonly course: Course;
  /** Everybody in the class, in the order wanted. */
  readonly learners: readonly string[];
  /** In order of time, each with the attempt that counts of each learner who handed in. */
  readonly sets: readonly { readonly set: HomeworkSet; readonly marks: readonly PaperMark[] }[];
}

export interface TermRow {
  readonly learner: string;
  /** Share of the marks by set, in the order of the sets; null where nothing was handed in. */
  readonly bySet: readonly (number | null)[];
  /** Share of all marks by skill, in the order of the columns; null where it was never asked or answered. */
  readonly bySkill: readonly (number | null)[];
}

export interface TermReport {
  readonly skills: readonly { readonly skill: string; readonly title: string }[];
  readonly rows: readonly TermRow[];
  readonly ideas: readonly Omit<ShownIdea, 'shownIn'>[];
}

export function termReport({ course, learners, sets }: TermWork): TermReport {
  const columns = [...new Set(sets.flatMap(({ set }) => set.places.map(({ skill }) => skill)))];
  const inClass = new Set(learners);
  const byLearner = sets.map(({ marks }) => new Map(marks.map((mark) => [mark.learner, mark])));
  const rows = learners.map((learner): TermRow => {
    const sums = new Map<string, { earned: number; outOf: number }>();
    const bySet = byLearner.map((marks) => {
      const mark = marks.get(learner);
      if (!mark) return null;
      for (const { skill, earned, outOf } of skillMarks(mark.items, course)) {
        const sum = sums.get(skill) ?? { earned: 0, outOf: 0 };
        sums.set(skill, { earned: sum.earned + earned, outOf: sum.outOf + outOf });
      }
      return totalOf(mark).share;
    });
    const bySkill = columns.map((skill) => {
      const sum = sums.get(skill);
      return sum ? sum.earned / sum.outOf : null;
    });
    return { learner, bySet, bySkill };
  });
  const own = sets.flatMap(({ marks }) => marks.filter(({ learner }) => inClass.has(learner)));
  return {
    skills: columns.map((skill) => ({ skill, title: course.skills.get(skill)?.title ?? skill })),
    rows,
    ideas: ideasIn(own).map(({ shownIn: _, ...idea }) => idea),
  };
}
