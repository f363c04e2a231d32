/**
 * Learners made of numbers, for comparing ways of practising. Each truly forgets as the memory model says, but with a
 * strength of its own that nobody else knows; right answers are drawn with the true chance.
 */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Grade, Recall } from '../../shared/memory.ts';
import { choose, planTowards, recallOf, type SkillGraph } from '../../src/memory/index.ts';
import { chanceAfter, type Memory, memoryAfter } from '../../src/memory/model.ts';
import { told } from '../support/in-english.ts';
import { DAY, reviewAs, START } from './arbitraries.ts';

export interface Course {
  readonly graph: SkillGraph;
  readonly days: number;
  readonly questionsADay: number;
}

/** What each skill was asked on each day: the skill of every question, by day. */
export type Diary = readonly (readonly string[])[];

export class Learner {
  readonly recalls = new Map<string, Recall>();
  private readonly truth = new Map<string, { readonly memory: Memory; readonly at: number }>();
  private readonly draw: () => number;
  private readonly strength: number;
  private circuits = 0;

  /** @param strength - stability of the true memory against the model's, 1 for a learner as the model has it */
  constructor(seed: number, strength: number) {
    const random = xoroshiro128plus(seed);
    this.draw = () => uniformFloat64(random);
    this.strength = strength;
  }

  /** The true chance of a right answer. */
  chance(skill: string, at: number): number {
    const known = this.truth.get(skill);
    return known ? chanceAfter((at - known.at) / DAY, known.memory.stability * this.strength) : 0;
  }

  answer(skill: string, at: number): void {
    const known = this.truth.get(skill);
    const luck = this.draw();
    // A first answer is lost by one learner in four and shaky for another (an assumption of the simulation).
    const grade: Grade = known
      ? luck < this.chance(skill, at)
        ? 'firm'
        : 'lost'
      : luck < 0.25
        ? 'lost'
        : luck < 0.5
          ? 'shaky'
          : 'firm';
    const gap = known ? (at - known.at) / DAY : 0;
    this.truth.set(skill, { memory: memoryAfter(known?.memory ?? null, gap, grade), at });
    this.recalls.set(skill, reviewAs(recallOf(this.recalls, skill), grade, at, `c${this.circuits++}`));
  }
}

export const assessmentOf = ({ days }: Course): number => START + days * DAY;

/** The mean of the true chances on the day of the assessment. */
export function outcome(course: Course, learner: Learner): number {
  const { skills } = course.graph;
  return skills.reduce((sum, { id }) => sum + learner.chance(id, assessmentOf(course)), 0) / skills.length;
}

/** Every day a new plan, and of it what is wanted on that day. */
export function practisePlanned(course: Course, learner: Learner): Diary {
  const { graph, days, questionsADay } = course;
  const diary: string[][] = [];
  for (let day = 0; day < days; day++) {
    const at = START + day * DAY;
    const wishes = {
      assessmentAt: assessmentOf(course),
      minutesADay: questionsADay,
      secondsPerQuestion: 60,
    };
    const plan = planTowards({ graph, recalls: learner.recalls, at, wishes });
    if (!plan.ok) throw new Error(told(plan.problems)[0]!.message);
    const { practice } = plan.value.days[0]!;
    const planned = practice.map(({ skill }) => skill);
    const today = practice.reduce((sum, { questions }) => sum + questions, 0);
    const recent: string[] = [];
    while (recent.length < today) {
      const choice = choose({ graph, recalls: learner.recalls, at, recent, seed: day, planned });
      if (choice.kind === 'none') break;
      learner.answer(choice.skill, at);
      recent.push(choice.skill);
    }
    diary.push(recent);
  }
  return diary;
}

/** Every day what is due, unproven or new, as long as the questions of the day go; nothing ahead of its time. */
export function practiseDue(course: Course, learner: Learner): Diary {
  const { graph, days, questionsADay } = course;
  const diary: string[][] = [];
  for (let day = 0; day < days; day++) {
    const at = START + day * DAY;
    const recent: string[] = [];
    while (recent.length < questionsADay) {
      const choice = choose({ graph, recalls: learner.recalls, at, recent, seed: day });
      if (choice.kind === 'none' || choice.kind === 'ahead') break;
      learner.answer(choice.skill, at);
      recent.push(choice.skill);
    }
    diary.push(recent);
  }
  return diary;
}

/** So many questions in equal parts a day: what is due first, and then ahead of its time what would be next. */
export function practiseSteadily(course: Course, learner: Learner, questions: number): void {
  const { graph, days } = course;
  for (let day = 0; day < days; day++) {
    const at = START + day * DAY;
    const today = Math.floor(((day + 1) * questions) / days) - Math.floor((day * questions) / days);
    const recent: string[] = [];
    while (recent.length < today) {
      const choice = choose({ graph, recalls: learner.recalls, at, recent, seed: day });
      if (choice.kind === 'none') break;
      learner.answer(choice.skill, at);
      recent.push(choice.skill);
    }
  }
}

/** The same questions of each skill in one go, skill after skill, as late as the questions a day allow. */
export function practiseMassed(course: Course, learner: Learner, diary: Diary): void {
  const questions = course.graph.skills.flatMap(({ id }) => diary.flat().filter((asked) => asked === id));
  questions.forEach((skill, index) => {
    const daysBefore = Math.ceil((questions.length - index) / course.questionsADay);
    learner.answer(skill, START + (course.days - daysBefore) * DAY);
  });
}
