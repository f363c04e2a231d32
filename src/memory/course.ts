/** One skill on its way to the assessment: where it stands now and the days it will be practised on. Used by the plan. */
import type { Skill } from '../../shared/memory.ts';
import { abilityAhead, abilityIn } from './ability.ts';
import { answersToShow } from './evidence.ts';
import { afterFirstDay, Cases, type Start } from './expectation.ts';
import type { Memory } from './model.ts';
import { type Recalls, recallOf } from './replay.ts';
import { isFarEnough } from './spacing.ts';
import { chanceOf, difficultyKept, growthOf, keptStability } from './steps.ts';
import { DAY } from './time.ts';

export class Course {
  readonly skill: Skill;
  readonly start: Start;
  /**
   * Questions on its first day until it is shown, if they go well (where not, the plan of the next day has the rest); 0
   * for a skill that is shown already.
   */
  readonly opening: number;
  /** The share of the marks to be expected where nothing is forgotten. No more practice is reckoned to change it; a plan of another day knows. */
  readonly ability: number;
  private readonly planned: number[] = [];
  /** What is expected after so many of its days, as far as it was worked out; a day that comes between undoes what is after. */
  private readonly expected: Cases[] = [];
  private trial = new Cases(1);

  /**
   * A skill as it is at the moment `at`, with no practice planned.
   *
   * @param most - questions on a day: what doesn't go into the first one, the plans of the days after it have
   */
  constructor(skill: Skill, recalls: Recalls, at: number, most = Number.POSITIVE_INFINITY) {
    const recall = recallOf(recalls, skill.id);
    this.skill = skill;
    if (recall.kind === 'new') {
      this.start = { memory: null, last: 0 };
      this.opening = answersToShow(0, 0);
      this.ability = abilityAhead(recalls);
    } else {
      this.start = { memory: recall, last: Math.min(0, (recall.lastAt - at) / DAY) };
      this.opening = answersToShow(recall.evidence, recall.reviews);
      this.ability = abilityIn(recall);
    }
    this.opening = Math.min(this.opening, Math.max(1, most));
  }

  /** Days of practice, counted from today (0), ascending. */
  get days(): readonly number[] {
    return this.planned;
  }

  /** Shown now, or on the first day that is planned for it. */
  get isOpened(): boolean {
    return this.opening === 0 || this.planned.length > 0;
  }

  /** How many questions it is asked on one of its days. */
  questionsOn(day: number): number {
    return this.planned.length === 0 || day === this.planned[0] ? Math.max(1, this.opening) : 1;
  }

  /** Plans one more day. */
  add(day: number): void {
    const at = this.countBefore(day);
    this.planned.splice(at, 0, day);
    this.expected.length = Math.min(this.expected.length, at + 1);
    this.trial = new Cases(this.planned.length + 1);
  }

  /** The chance of a right answer to be expected on day `on`, with what is planned until then. */
  prospect(on: number): number {
    let count = this.planned.length;
    while (count > 0 && this.planned[count - 1]! > on) count--;
    if (count === 0 && this.start.memory === null) return 0;
    return this.after(count).chance(Math.max(0, on - this.lastOf(count)));
  }

  /** The same with one more day, which is none of those planned and comes after the first of a new skill. */
  prospectWith(day: number, on: number): number {
    const at = this.countBefore(day);
    const { planned, trial } = this;
    trial.after(this.after(at), Math.max(0, day - this.lastOf(at)));
    let last = day;
    for (let next = at; next < planned.length && planned[next]! <= on; next++) {
      trial.after(trial, planned[next]! - last);
      last = planned[next]!;
    }
    return trial.chance(Math.max(0, on - last));
  }

  /** Whether that day and those after it are far enough from the ones before them, where it is to be known on day `on`. */
  isSpacedWith(day: number, on: number, target: number): boolean {
    const at = this.countBefore(day);
    const { planned } = this;
    let { stability, difficulty } = this.after(at).kept;
    let gap = day - this.lastOf(at);
    if (!isFarEnough(gap, on - day, stability, target)) return false;
    let last = day;
    for (let next = at; next < planned.length; next++) {
      ({ stability, difficulty } = kept(stability, difficulty, Math.max(0, gap)));
      gap = planned[next]! - last;
      last = planned[next]!;
      if (!isFarEnough(gap, on - last, stability, target)) return false;
    }
    return true;
  }

  private countBefore(day: number): number {
    let count = 0;
    while (count < this.planned.length && this.planned[count]! < day) count++;
    return count;
  }

  /** The day of the last review after so many days of practice. */
  private lastOf(count: number): number {
    return count === 0 ? this.start.last : this.planned[count - 1]!;
  }

  /** What is expected after so many days of practice; of a new skill after one at least. */
  private after(count: number): Cases {
    const known = this.expected[count];
    if (known) return known;
    const { memory } = this.start;
    const made = new Cases(count);
    if (count === 0 || (count === 1 && memory === null)) made.begin(memory ?? afterFirstDay());
    else made.after(this.after(count - 1), Math.max(0, this.lastOf(count) - this.lastOf(count - 1)));
    this.expected[count] = made;
    return made;
  }
}

/** A memory after one more right answer, so many days later. */
function kept(stability: number, difficulty: number, gap: number): Memory {
  const growth = growthOf(stability, difficulty);
  return {
    stability: keptStability(stability, growth, chanceOf(gap, stability)),
    difficulty: difficultyKept(difficulty),
  };
}
