/** The recall state of one learner for one skill: how it changes with a review, and what it says at a moment. */
import type { BegunRecall, Grade, Recall } from '../../shared/memory.ts';
import { chanceAfter, daysUntil, memoryAfter } from './model.ts';
import { DAY, daysBetween, SLACK } from './time.ts';

/** The chance of a right answer at which a skill comes back: the one the model's stability is measured by. */
export const TARGET = 0.9;

/**
 * On how many different circuits a skill is proven. One right answer may be luck (two lamps: one in four); two on
 * different circuits are rarely luck and never the memory of a picture.
 */
export const PROVEN_ON = 2;

const NEW: Recall = Object.freeze({ kind: 'new' });

/** The state before the first review. */
export const newRecall = (): Recall => NEW;

/** The circuits a skill is proven on after one more answer. */
function provenAfter(before: readonly string[], grade: Grade, circuit: string): string[] {
  switch (grade) {
    case 'lost':
      return [];
    case 'shaky':
      return [...before];
    case 'firm':
    case 'sure':
      return before.length === PROVEN_ON || before.includes(circuit) ? [...before] : [...before, circuit];
  }
}

/**
 * The state after a review graded `grade` at the moment `at` (milliseconds since 1970) on `circuit`.
 *
 * Time never throws. A review that the clock puts before the last one counts as happening at once after it; its moment
 * is kept as given, because the usual reason is a clock that ran ahead and has been put right.
 */
export function review(recall: Recall, grade: Grade, at: number, circuit: string): BegunRecall {
  const before = recall.kind === 'begun' ? recall : null;
  const memory = memoryAfter(before, before ? daysBetween(before.lastAt, at) : 0, grade);
  const provenOn = provenAfter(before?.provenOn ?? [], grade, circuit);
  Object.freeze(provenOn);
  return Object.freeze({
    kind: 'begun',
    stability: memory.stability,
    difficulty: memory.difficulty,
    firstAt: before?.firstAt ?? at,
    lastAt: at,
    reviews: (before?.reviews ?? 0) + 1,
    lapses: (before?.lapses ?? 0) + (before && grade === 'lost' ? 1 : 0),
    provenOn,
  });
}

/** The chance of a right answer at a moment, 0 to 1. Never reviewed: 0. Before the last review: 1, as just after it. */
export const retrievability = (recall: Recall, at: number): number =>
  recall.kind === 'new' ? 0 : chanceAfter(daysBetween(recall.lastAt, at), recall.stability);

const dueOf = (recall: BegunRecall, target: number): number =>
  recall.lastAt + daysUntil(target, recall.stability) * DAY;

/**
 * When the chance will have fallen to `target`, in whole days after the last review and at least one; null for a skill
 * that was never reviewed. `target` is above 0 and up to 1.
 */
export const dueAt = (recall: Recall, target: number = TARGET): number | null =>
  recall.kind === 'new' ? null : dueOf(recall, target);

/** Whether a skill wants practice now: due within the next hours, or last reviewed in what now is the future. */
export const isDue = (recall: Recall, at: number, target: number = TARGET): boolean =>
  recall.kind === 'begun' && (dueOf(recall, target) <= at + SLACK || recall.lastAt > at + SLACK);

/** Answered `firm` or `sure` on enough different circuits since it was last lost. */
export const isProven = (recall: Recall): boolean =>
  recall.kind === 'begun' && recall.provenOn.length >= PROVEN_ON;

/**
 * Whether a learner can do it now: proven, and not forgotten since. Both are needed. The model's first estimate comes
 * from one answer, which luck could give; and a proof of last year says little of today.
 */
export const isHeld = (recall: Recall, at: number, target: number = TARGET): boolean =>
  isProven(recall) && retrievability(recall, at) >= target;
