/** One skill on its way to the assessment: where it stands now and the days it will be practised on. Used by the plan. */
import type { Skill } from '../../shared/memory.ts';
import { expectedChance, type Start } from './expectation.ts';
import { PROVEN_ON } from './recall.ts';
import { type Recalls, recallOf } from './replay.ts';
import { DAY } from './time.ts';

export interface Course {
  readonly skill: Skill;
  readonly start: Start;
  /**
   * Questions on its first day until it is proven, if they go well (where not, the plan of the next day has the rest); 0
   * for a skill that is proven already.
   */
  readonly opening: number;
  /** Days of practice, counted from today (0), ascending. The plan adds to it. */
  readonly days: number[];
}

/** A skill as it is at the moment `at`, with no practice planned. */
export function courseOf(skill: Skill, recalls: Recalls, at: number): Course {
  const recall = recallOf(recalls, skill.id);
  if (recall.kind === 'new') return { skill, start: { memory: null, last: 0 }, opening: PROVEN_ON, days: [] };
  return {
    skill,
    start: { memory: recall, last: Math.min(0, (recall.lastAt - at) / DAY) },
    opening: PROVEN_ON - recall.provenOn.length,
    days: [],
  };
}

/** Proven now, or on the first day that is planned for it. */
export const isOpened = ({ opening, days }: Course): boolean => opening === 0 || days.length > 0;

/** How many questions it is asked on one of its days. */
export const questionsOn = ({ opening, days }: Course, day: number): number =>
  days.length === 0 || day === days[0] ? Math.max(1, opening) : 1;

/** The chance of a right answer to be expected on day `on`, with `extra` as one more day of practice. */
export function prospect({ start, days }: Course, on: number, extra?: number): number {
  const until = (extra === undefined ? days : withDay(days, extra)).filter((day) => day <= on);
  return expectedChance(start, until, on);
}

/** The days with one more, ascending. */
export const withDay = (days: readonly number[], day: number): readonly number[] =>
  [...days, day].toSorted((one, other) => one - other);

export function addDay({ days }: Course, day: number): void {
  days.push(day);
  days.sort((one, other) => one - other);
}
