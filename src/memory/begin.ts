/** The first part of a plan: when each skill is begun, so that what it stands on is shown and known on that day. */
import type { Course } from './course.ts';

export interface Limits {
  /** Questions still free on each day; what is planned is taken off. */
  readonly free: number[];
  readonly questionsADay: number;
  readonly newADay: number;
  /** New skills begun today already. */
  readonly begunToday: number;
  readonly target: number;
}

/**
 * Plans the first day of every skill that isn't shown, the earliest possible, in the order of the list (each after what
 * it stands on). Where something under it would be half forgotten by then, that is practised first on the same day.
 */
export function planBeginnings(courses: readonly Course[], limits: Limits): void {
  const { free, questionsADay, newADay, target } = limits;
  const byId = new Map(courses.map((course) => [course.skill.id, course]));
  const waiting = new Set(courses.filter((course) => !course.isOpened));
  for (let day = 0; day < free.length && waiting.size > 0; day++) {
    let begun = day === 0 ? limits.begunToday : 0;
    for (const course of waiting) {
      const isNew = course.start.memory === null;
      if (isNew && begun >= newADay) continue;
      // What it stands on was put into the same list, or the caller left it out because it isn't wanted.
      const under = isNew ? course.skill.needs.map((id) => byId.get(id)!) : [];
      if (!under.every(({ isOpened }) => isOpened)) continue;
      const refresh = under.filter((need) => !need.days.includes(day) && need.prospect(day) < target);
      const questions = course.questionsOn(day) + refresh.length;
      if (questions > free[day]!) {
        // More than any day holds: what is under it is refreshed on the days before.
        if (questions > questionsADay) {
          for (const need of refresh.slice(0, free[day])) {
            need.add(day);
            free[day]! -= 1;
          }
        }
        continue;
      }
      for (const need of refresh) need.add(day);
      course.add(day);
      free[day]! -= questions;
      waiting.delete(course);
      if (isNew) begun++;
    }
  }
}
