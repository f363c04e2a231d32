import type { PlanWishes, Recall } from '../../../shared/memory.ts';
import {
  dueAt,
  expectedShare,
  isHeld,
  isProven,
  isShown,
  openSkills,
  planTowards,
  type Recalls,
  recallOf,
} from '../../memory/index.ts';
import type { Course } from '../../practice/index.ts';
import { type ProblemWords, tellProblems } from '../../words/problems.ts';
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

/** Answers after which what they earned says something, though they don't show the skill. */
const SOME_ANSWERS = 3;

const saysSomething = (recall: Recall): boolean =>
  isShown(recall) || (recall.kind === 'begun' && recall.reviews >= SOME_ANSWERS);

interface Wanted {
  readonly at: number;
  /** How many skills may be begun in a day; null leaves it to the memory. */
  readonly newADay?: number | null | undefined;
}

const planFor = (
  course: Course,
  recalls: Recalls,
  { at, wishes, newADay }: Wanted & { readonly wishes: PlanWishes },
) =>
  planTowards({
    graph: course.graph,
    recalls,
    at,
    wishes,
    ...(typeof newADay === 'number' ? { newADay } : {}),
  });

/** How each skill stands now, and the plan towards an assessment when there is one. */
export function progressOf(
  words: ProblemWords,
  course: Course,
  recalls: Recalls,
  { at, wishes, newADay }: Wanted & { readonly wishes: PlanWishes | null },
): Progress {
  const open = new Set(openSkills(course.graph, recalls, at));
  const skills = course.bank.topics.flatMap((topic) =>
    topic.skills.map(({ id, title }): SkillProgress => {
      const recall = recallOf(recalls, id);
      return {
        skill: id,
        title,
        topic: topic.title,
        standing: standingOf(recalls, id, at, open),
        chance: saysSomething(recall) ? expectedShare(recall, at) : null,
        due: dueAt(recall),
      };
    }),
  );
  if (!wishes) return { skills, plan: null };
  const plan = planFor(course, recalls, { at, wishes, newADay });
  if (!plan.ok)
    return {
      skills,
      plan: {
        problem: tellProblems(words, plan.problems)
          .map(({ message, hint }) => `${message} ${hint}`)
          .join(' '),
      },
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
        .toSorted((one, other) => one.chance - other.chance)
        .map(({ skill, chance }) => ({
          skill,
          title: course.skills.get(skill)?.title ?? skill,
          share: chance,
        })),
      average,
    },
  };
}

/** The skills that the plan towards an assessment wants on the day of `at`; null when there can be no plan. */
export function plannedToday(
  course: Course,
  recalls: Recalls,
  wanted: Wanted & { readonly wishes: PlanWishes },
): readonly string[] | null {
  const plan = planFor(course, recalls, wanted);
  return plan.ok ? (plan.value.days[0]?.practice.map(({ skill }) => skill) ?? []) : null;
}
