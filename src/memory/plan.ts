/** A plan towards an assessment: what to practise on each day, and an honest word on what will not be ready. */
import type { PlanWishes, Skill } from '../../shared/memory.ts';
import type { Checked, Problem } from '../../shared/problem.ts';
import { planBeginnings } from './begin.ts';
import { Course } from './course.ts';
import { planDeepening } from './deepen.ts';
import { begunOnDayOf, NEW_A_DAY } from './pace.ts';
import { memoryProblem } from './problem-codes.ts';
import { TARGET } from './recall.ts';
import type { Recalls } from './replay.ts';
import type { SkillGraph } from './skills.ts';
import { DAY } from './time.ts';

/** The furthest day that is planned for. Before that a plan would leave months empty; what comes due is better. */
export const FURTHEST_DAYS = 183;

/** Who has earned less of a skill's marks than this isn't ready, however lately it was practised. Common practice, no source. */
export const ABLE = 0.75;

/** The last practice ends this long before the assessment. */
const REST_BEFORE = DAY / 2;

export interface PlanRequest {
  readonly graph: SkillGraph;
  readonly recalls: Recalls;
  /** Now: the first practice. The following ones are at the same time of each day. */
  readonly at: number;
  readonly wishes: PlanWishes;
  /** What is assessed; what it stands on is planned too. Default: the whole graph. */
  readonly skills?: readonly string[];
  /** Default NEW_A_DAY. */
  readonly newADay?: number;
  /** Default TARGET. */
  readonly target?: number;
}

export interface PlannedDay {
  readonly at: number;
  /** Each after what it stands on. */
  readonly practice: readonly { readonly skill: string; readonly questions: number }[];
}

/**
 * What is to be expected of a skill on the day. ready: shown, remembered well enough, and answered well enough so far if it was begun. weak: begun, and
 * one of these not. not-begun: there was no room to begin it (its chance is 0) or to show it.
 */
export interface Prospect {
  readonly kind: 'ready' | 'weak' | 'not-begun';
  readonly skill: string;
  /** How likely it is not to be forgotten at the assessment, 0 to 1. */
  readonly remembered: number;
  /** Share of the marks to be expected then: of what is remembered, as much as was earned so far. */
  readonly chance: number;
}

export interface Plan {
  /** One for each day of practice until the assessment, some of them empty. */
  readonly days: readonly PlannedDay[];
  /** Every skill that was planned for, in the order of the graph. */
  readonly prospects: readonly Prospect[];
  /** Mean of the shares over the prospects; 1 where there are none. */
  readonly average: number;
  /** Whether everything will be ready. */
  readonly fits: boolean;
}

/** The skills asked for and everything they stand on, in the order of the graph. */
function withFoundations(graph: SkillGraph, wanted: readonly string[]): readonly Skill[] {
  const kept = new Set(wanted);
  for (const { id, needs } of graph.skills.toReversed())
    if (kept.has(id)) for (const need of needs) kept.add(need);
  return graph.skills.filter(({ id }) => kept.has(id));
}

function problemsOf({ graph, at, wishes, skills = [] }: PlanRequest): readonly Problem[] {
  const problems: Problem[] = skills
    .filter((id) => !graph.byId.has(id))
    .map((skill) => memoryProblem({ says: 'unknown-skill', skill }));
  if (wishes.assessmentAt <= at) problems.push(memoryProblem({ says: 'assessment-past' }));
  if (wishes.assessmentAt > at + FURTHEST_DAYS * DAY)
    problems.push(memoryProblem({ says: 'assessment-far', days: FURTHEST_DAYS }));
  return problems;
}

function prospectOf(course: Course, on: number, target: number): Prospect {
  const remembered = course.prospect(on);
  const { ability, isOpened, start } = course;
  // Of a skill that wasn't begun nobody knows yet how it goes: what is expected of it says so, and it is given its time.
  const isReady = remembered >= target && (start.memory === null || ability >= ABLE);
  return {
    kind: !isOpened ? 'not-begun' : isReady ? 'ready' : 'weak',
    skill: course.skill.id,
    remembered,
    chance: remembered * ability,
  };
}

/**
 * What to practise on each day so that everything is held on the day of the assessment, as far as the minutes go. Skills
 * are begun as early as their prerequisites allow, then every further question goes where the model expects it to help
 * most on the day, spaced as `spacing.ts` says. The reckoning expects lapses as often as the model does, but not the
 * extra questions after them, so a plan is made anew every day from the recall states as they then are.
 *
 * Refused with `unknown-skill`, `assessment-past` or `assessment-far`.
 */
export function planTowards(request: PlanRequest): Checked<Plan> {
  const problems = problemsOf(request);
  if (problems.length > 0) return { ok: false, problems };
  const { graph, recalls, at, wishes, newADay = NEW_A_DAY, target = TARGET } = request;
  const on = (wishes.assessmentAt - at) / DAY;
  const practices = Math.max(0, Math.floor((wishes.assessmentAt - REST_BEFORE - at) / DAY) + 1);
  const questionsADay = Math.floor((wishes.minutesADay * 60) / wishes.secondsPerQuestion);
  const free = Array.from({ length: practices }, () => questionsADay);

  const skills = request.skills ? withFoundations(graph, request.skills) : graph.skills;
  const courses = skills.map((skill) => new Course(skill, recalls, at, questionsADay));
  const begunToday = begunOnDayOf(graph, recalls, at);
  planBeginnings(courses, { free, questionsADay, newADay, begunToday, target });
  planDeepening(courses, free, on, target);

  const days = free.map((_, day) => ({
    at: at + day * DAY,
    practice: courses
      .filter(({ days }) => days.includes(day))
      .map((course) => ({ skill: course.skill.id, questions: course.questionsOn(day) })),
  }));
  const prospects = courses.map((course) => prospectOf(course, on, target));
  const sum = prospects.reduce((total, { chance }) => total + chance, 0);
  return {
    ok: true,
    value: {
      days,
      prospects,
      average: prospects.length === 0 ? 1 : sum / prospects.length,
      fits: prospects.every(({ kind }) => kind === 'ready'),
    },
  };
}
