/** A homework set as a tutor has put it together: whether it can be issued, and where it stands in time. */
import type { HomeworkSet } from '../../shared/homework.ts';
import type { Checked, Problem } from '../../shared/problem.ts';
import { familyOf } from '../generator/index.ts';
import type { Course } from '../practice/index.ts';
import { homeworkProblem } from './problem-codes.ts';

/**
 * Checks a set against the banks, all of it at once: `homework-times`, `homework-unknown-skill`, `homework-unknown-family`.
 * Whether enough circuits can be made shows when papers are made.
 */
export function checkSet(set: HomeworkSet, course: Course): Checked<HomeworkSet> {
  const problems: Problem[] = [];
  if (set.closesAt <= set.opensAt) problems.push(homeworkProblem({ says: 'homework-times' }));
  set.places.forEach(({ skill, families }, index) => {
    if (!course.skills.has(skill))
      problems.push(homeworkProblem({ says: 'homework-unknown-skill.place', place: index + 1, skill }));
    for (const family of families.filter((id) => !familyOf(id)))
      problems.push(homeworkProblem({ says: 'homework-unknown-family', place: index + 1, family }));
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: set };
}

export type Phase = 'before' | 'open' | 'closed';

/** Where a set stands at a moment. It is open from the first millisecond and no longer open at the closing one. */
export const phaseOf = ({ opensAt, closesAt }: HomeworkSet, at: number): Phase =>
  at < opensAt ? 'before' : at < closesAt ? 'open' : 'closed';

/** Whether a learner may look through a marked paper at a moment. `submitted`: this attempt has been handed in. */
export function mayReview(set: HomeworkSet, at: number, submitted: boolean): boolean {
  switch (set.review) {
    case 'after-submitting':
      return submitted || phaseOf(set, at) === 'closed';
    case 'after-closing':
      return phaseOf(set, at) === 'closed';
    case 'never':
      return false;
  }
}
