/** The second part of a plan: the days on which what has been begun is practised again. */
import type { Course } from './course.ts';

/** No more practice is planned for a skill that is expected to be this certain on the day. */
export const CERTAIN = 0.98;

/** Gains smaller than this are noise of the arithmetic. */
const LEAST_GAIN = 1e-5;

interface Step {
  readonly course: Course;
  readonly day: number;
  /** By how much the chance at the assessment rises. */
  readonly gain: number;
}

/** One more practice of a skill on each free day that is spaced and of use, the most useful last. */
function stepsFor(course: Course, free: readonly number[], on: number, target: number): Step[] {
  if (!course.isOpened) return [];
  const now = course.prospect(on);
  if (now >= CERTAIN) return [];
  const first = course.opening === 0 ? 0 : course.days[0]! + 1;
  const steps: Step[] = [];
  for (let day = first; day < free.length; day++) {
    if (free[day]! < 1 || course.days.includes(day)) continue;
    if (!course.isSpacedWith(day, on, target)) continue;
    const gain = course.prospectWith(day, on) - now;
    if (gain > LEAST_GAIN) steps.push({ course, day, gain });
  }
  return steps.sort((one, other) => one.gain - other.gain || other.day - one.day);
}

/**
 * Gives each free question to the skill and the day where it raises the chance on day `on` most, one after the other,
 * until the days are full or nothing helps any more. `free` is taken off.
 */
export function planDeepening(courses: readonly Course[], free: number[], on: number, target: number): void {
  const stepsOf = courses.map((course) => stepsFor(course, free, on, target));
  for (;;) {
    let best: Step | undefined;
    let at = -1;
    stepsOf.forEach((steps, index) => {
      // A day that has filled up since.
      while (steps.length > 0 && free[steps.at(-1)!.day]! < 1) steps.pop();
      const step = steps.at(-1);
      if (step && (!best || step.gain > best.gain)) {
        best = step;
        at = index;
      }
    });
    if (!best) return;
    best.course.add(best.day);
    free[best.day]! -= 1;
    stepsOf[at] = stepsFor(best.course, free, on, target);
  }
}
