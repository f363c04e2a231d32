/** What one learner's paper says: marks by skill, the ideas behind wrong answers, and what to revise. */
import type { ItemMark, PaperMark } from '../../../shared/homework.ts';
import type { Course } from '../../practice/index.ts';
import { earnedOf, type Total, totalOf } from '../marking/totals.ts';
import { ideasIn, type ShownIdea } from './ideas.ts';

export interface SkillMarks {
  readonly skill: string;
  readonly title: string;
  readonly earned: number;
  readonly outOf: number;
  /** 0 to 1. */
  readonly share: number;
  readonly items: number;
}

export interface ToRevise {
  readonly skill: string;
  readonly title: string;
  /** The lesson that teaches it; null for a skill that the banks no longer have. */
  readonly topic: { readonly id: string; readonly title: string } | null;
  readonly share: number;
}

export interface LearnerReport {
  readonly learner: string;
  readonly attempt: number;
  readonly total: Total;
  /** In the order of the paper. */
  readonly skills: readonly SkillMarks[];
  readonly ideas: readonly ShownIdea[];
  /** The weakest first. */
  readonly revise: readonly ToRevise[];
}

/** Below this share of a skill's marks it is to be revised: the grade `lost` ends there too (docs/memory.md). */
export const REVISE_BELOW = 0.75;

/** Marks by skill, in the order in which the skills first appear. */
export function skillMarks(items: readonly ItemMark[], course: Course): readonly SkillMarks[] {
  return [...new Set(items.map(({ skill }) => skill))].map((skill) => {
    const own = items.filter((item) => item.skill === skill);
    const earned = own.reduce((sum, item) => sum + earnedOf(item), 0);
    const outOf = own.reduce((sum, { marks }) => sum + marks, 0);
    const title = course.skills.get(skill)?.title ?? skill;
    return { skill, title, earned, outOf, share: earned / outOf, items: own.length };
  });
}

function topicOf(course: Course, skill: string): ToRevise['topic'] {
  const topic = course.bank.topics.find(({ skills }) => skills.some(({ id }) => id === skill));
  return topic ? { id: topic.id, title: topic.title } : null;
}

export function learnerReport(mark: PaperMark, course: Course): LearnerReport {
  const skills = skillMarks(mark.items, course);
  return {
    learner: mark.learner,
    attempt: mark.attempt,
    total: totalOf(mark),
    skills,
    ideas: ideasIn([mark]),
    revise: skills
      .filter(({ share }) => share < REVISE_BELOW)
      .toSorted((one, other) => one.share - other.share)
      .map(({ skill, title, share }) => ({ skill, title, share, topic: topicOf(course, skill) })),
  };
}
