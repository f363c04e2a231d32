/**
 * The formulas of the memory model (FSRS-6, by ts-fsrs); this file and steps.ts alone know the library. Its scheduler is not
 * used: it counts calendar days in UTC, wants `Date`s, and has steps of minutes that a skill doesn't want. Time here is
 * days and fractions of days, so nothing depends on a time zone.
 */
import { FSRSAlgorithm, generatorParameters } from 'ts-fsrs';
import type { Grade } from '../../shared/memory.ts';

/** What the model keeps of one skill. */
export interface Memory {
  /** Days until the chance of a right answer has fallen to 90 %; `LEAST_STABILITY` to `MOST_STABILITY`. */
  readonly stability: number;
  /** 1 to 10. */
  readonly difficulty: number;
}

/** The stabilities, in days, that the model takes and gives. */
export const LEAST_STABILITY = 0.001;
export const MOST_STABILITY = 36_500;

const model = new FSRSAlgorithm(generatorParameters({ enable_fuzz: false, enable_short_term: false }));

/** The model's own numbers for the grades. */
const NUMBER_OF: Readonly<Record<Grade, 1 | 2 | 3 | 4>> = { lost: 1, shaky: 2, firm: 3, sure: 4 };

/**
 * The memory after a review `days` (0 or more) after the one before. Null: never reviewed, and `days` doesn't matter.
 * A review at once changes no stability, however often it is repeated, unless it is lost.
 */
export function memoryAfter(memory: Memory | null, days: number, grade: Grade): Memory {
  const { stability, difficulty } = model.next_state(memory, days, NUMBER_OF[grade]);
  return { stability, difficulty };
}

/** The chance of a right answer, 0 to 1, `days` (0 or more) after a review that left this stability. */
export const chanceAfter = (days: number, stability: number): number =>
  model.forgetting_curve(days, stability);

const modifiers = new Map<number, number>();

/** Days until the chance has fallen to `target`, for each day of stability. */
function modifierOf(target: number): number {
  let modifier = modifiers.get(target);
  if (modifier === undefined) {
    modifier = model.calculate_interval_modifier(target);
    // Targets are few; whoever tries many doesn't have them kept.
    if (modifiers.size < 100) modifiers.set(target, modifier);
  }
  return modifier;
}

/**
 * Whole days, at least 1, until the chance has fallen to `target` (above 0, up to 1).
 * @throws RangeError for any other target.
 */
export function daysUntil(target: number, stability: number): number {
  if (!(target > 0 && target <= 1)) throw new RangeError(`A target is above 0 and up to 1, not ${target}.`);
  const days = Math.round(stability * modifierOf(target));
  return Math.min(Math.max(days, 1), model.parameters.maximum_interval);
}
