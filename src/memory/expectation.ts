/** What is to be expected of a skill's memory on a later day if it is practised on given days. */
import { LEAST_STABILITY, type Memory, MOST_STABILITY, memoryAfter } from './model.ts';
import {
  chanceOf,
  difficultyAfterLapse,
  difficultyKept,
  fallOf,
  growthOf,
  keptStability,
  lapsedStability,
} from './steps.ts';

/** A skill as it is now. Days are counted from now; `last` is the day of its last review, 0 or less. */
export interface Start {
  /** Null: never practised. */
  readonly memory: Memory | null;
  readonly last: number;
}

/**
 * Nobody knows how a first answer will go, so a first day leaves what a shaky one leaves. The later questions of that
 * day show the skill; at once after the first they change nothing that is reckoned with here.
 */
export const afterFirstDay = (): Memory => memoryAfter(null, 0, 'shaky');

/**
 * What a memory may have become, case by case: in the first every review has succeeded. Every review succeeds with the
 * chance that the model gives it and is then firm, else it is lost. Cases that lapsed in the same review are reckoned together
 * (the geometric mean of the stabilities, the mean of the difficulties), so that the work grows with the square of the reviews
 * and not with two to them.
 *
 * Numbers in rows, written over again and again: a plan tries tens of thousands of days.
 */
export class Cases {
  private count = 0;
  private readonly weights: Float64Array;
  private readonly stabilities: Float64Array;
  private readonly difficulties: Float64Array;
  /** How each case grows with a right answer and what it falls back to, whenever the next review is; for so many of them. */
  private looked = 0;
  private readonly growths: Float64Array;
  private readonly falls: Float64Array;

  /** @param reviews - how many there are at most */
  constructor(reviews: number) {
    const row = (): Float64Array => new Float64Array(reviews + 1);
    [this.weights, this.stabilities, this.difficulties] = [row(), row(), row()];
    [this.growths, this.falls] = [row(), row()];
  }

  /** One case: what a review has left. */
  begin({ stability, difficulty }: Memory): this {
    this.count = 1;
    this.looked = 0;
    this.weights[0] = 1;
    this.stabilities[0] = stability;
    this.difficulties[0] = difficulty;
    return this;
  }

  private look(): void {
    for (let at = this.looked; at < this.count; at++) {
      this.growths[at] = growthOf(this.stabilities[at]!, this.difficulties[at]!);
      this.falls[at] = fallOf(this.stabilities[at]!, this.difficulties[at]!);
    }
    this.looked = this.count;
  }

  /** What becomes of `before`, which may be this itself, with one more review so many days later (0 or more). */
  after(before: Cases, gap: number): this {
    before.look();
    const { count, weights, stabilities, difficulties, growths, falls } = before;
    let lapses = 0;
    let logarithms = 0;
    let harder = 0;
    for (let at = 0; at < count; at++) {
      const weight = weights[at]!;
      const stability = stabilities[at]!;
      const difficulty = difficulties[at]!;
      const chance = chanceOf(gap, stability);
      const lapsed = weight * (1 - chance);
      lapses += lapsed;
      logarithms += lapsed * Math.log(lapsedStability(stability, falls[at]!, chance));
      harder += lapsed * difficultyAfterLapse(difficulty);
      this.weights[at] = weight * chance;
      this.stabilities[at] = keptStability(stability, growths[at]!, chance);
      this.difficulties[at] = difficultyKept(difficulty);
    }
    this.looked = 0;
    this.count = count;
    if (lapses < 1e-9) return this;
    // A mean of equal numbers may be a rounding beside them, and the model refuses what is beside its bounds.
    const stability = Math.exp(logarithms / lapses);
    this.weights[count] = lapses;
    this.stabilities[count] = Math.min(Math.max(stability, LEAST_STABILITY), MOST_STABILITY);
    this.difficulties[count] = harder / lapses;
    this.count = count + 1;
    return this;
  }

  /** The expected chance of a right answer so many days later (0 or more). */
  chance(days: number): number {
    let sum = 0;
    for (let at = 0; at < this.count; at++) sum += this.weights[at]! * chanceOf(days, this.stabilities[at]!);
    return sum;
  }

  /** Where every review has succeeded. */
  get kept(): Memory {
    return { stability: this.stabilities[0]!, difficulty: this.difficulties[0]! };
  }
}
