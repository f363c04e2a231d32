import type { PlanWishes } from '../../../shared/memory.ts';
import type { Placement } from '../../../shared/settings.ts';
import {
  dueAt,
  isHeld,
  isProven,
  openSkills,
  planTowards,
  type Recalls,
  recallOf,
  retrievability,
} from '../../memory/index.ts';
import { type Course, withPlacement } from '../../practice/index.ts';
import type { Progress, SkillProgress } from './messages.ts';

function standingOf(
  recalls: Recalls,
  skill: string,
  at: number,
  open: ReadonlySet<string>,
): SkillProgress['standing'] {
  const recall = recallOf(recalls, skill);
  if (recall.kind === 'new') return open.has(skill) ? 'open' : 'shut';
  if (isHeld(recall, at)) return 'held';
  return isProven(recall) ? 'fading' : 'begun';
}

/** How each skill stands now, and the plan towards an assessment when there is one. */
export function progressOf(
  course: Course,
  answered: Recalls,
  placement: Placement | null,
  at: number,
  wishes: PlanWishes | null,
): Progress {
  const recalls = withPlacement(answered, placement);
  const open = new Set(openSkills(course.graph, recalls, at));
  const skills = course.bank.topics.flatMap((topic) =>
    topic.skills.map(({ id, title }): SkillProgress => {
      const recall = recallOf(recalls, id);
      return {
        skill: id,
        title,
        topic: topic.title,
        standing: standingOf(recalls, id, at, open),
        chance: isProven(recall) ? retrievability(recall, at) : null,
        due: dueAt(recall),
      };
    }),
  );
  if (!wishes) return { skills, plan: null };
  const plan = planTowards({ graph: course.graph, recalls, at, wishes });
  if (!plan.ok)
    return {
      skills,
      plan: { problem: plan.problems.map(({ message, hint }) => `${message} ${hint}`).join(' ') },
    };
  const { days, prospects, average } = plan.value;
  return {
    skills,
    plan: {
      days: days.map((day) => ({
        at: day.at,
        questions: day.practice.reduce((sum, { questions }) => sum + questions, 0),
      })),
      notReady: prospects
        .filter(({ kind }) => kind !== 'ready')
        .map(({ skill }) => course.skills.get(skill)?.title ?? skill),
      average,
    },
  };
}

/** The skills that the plan towards an assessment wants on the day of `at`; null when there can be no plan. */
export function plannedToday(
  course: Course,
  answered: Recalls,
  placement: Placement | null,
  at: number,
  wishes: PlanWishes,
): readonly string[] | null {
  const plan = planTowards({ graph: course.graph, recalls: withPlacement(answered, placement), at, wishes });
  return plan.ok ? (plan.value.days[0]?.practice.map(({ skill }) => skill) ?? []) : null;
}
