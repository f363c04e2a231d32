/** The recall state of one learner for one skill: how it changes with a review, and what it says at a moment. */
import type { BegunRecall, Grade, Recall } from '../../shared/memory.ts';
import { evidenceAfter, PROVEN_AT, SHOWN_AT, weightOf } from './evidence.ts';
import { chanceAfter, daysUntil, memoryAfter } from './model.ts';
import { DAY, daysBetween, SLACK } from './time.ts';

/** The chance of a right answer at which a skill comes back: the one the model's stability is measured by. */
export const TARGET = 0.9;

/**
 * How much each answer weighs against the one after it, where it counts what they earned: who has learnt it is believed after some
 * seven answers. Common practice, no source.
 */
export const KEPT = 0.85;

const NEW: Recall = Object.freeze({ kind: 'new' });

/** The state before the first review. */
export const newRecall = (): Recall => NEW;

/** So many circuits are remembered: of any that were seen none is asked again, so one of longer ago hardly ever comes. */
const MOST_CIRCUITS = 20;

/** One answer, as much of it as the memory goes by. */
export interface Reviewed {
  readonly grade: Grade;
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly circuit: string;
  /** The share of the marks that it earned by itself, without help. */
  readonly share: number;
  /** How many times as likely it is from somebody who can do it as from somebody who guesses: `ratioOf`. */
  readonly ratio: number;
}

/**
 * The state after one more answer.
 *
 * Time never throws. A review that the clock puts before the last one counts as happening at once after it; its moment
 * is kept as given, because the usual reason is a clock that ran ahead and has been put right.
 */
export function review(recall: Recall, { grade, at, circuit, share, ratio }: Reviewed): BegunRecall {
  const before = recall.kind === 'begun' ? recall : null;
  const memory = memoryAfter(before, before ? daysBetween(before.lastAt, at) : 0, grade);
  const reviews = (before?.reviews ?? 0) + 1;
  const known = before?.circuits ?? [];
  const weight = weightOf(ratio, grade, !known.includes(circuit));
  const circuits = [...known.filter((each) => each !== circuit), circuit].slice(-MOST_CIRCUITS);
  Object.freeze(circuits);
  return Object.freeze({
    kind: 'begun',
    stability: memory.stability,
    difficulty: memory.difficulty,
    firstAt: before?.firstAt ?? at,
    lastAt: at,
    reviews,
    lapses: (before?.lapses ?? 0) + (before && grade === 'lost' ? 1 : 0),
    lostLately: grade === 'lost' ? (before?.lostLately ?? 0) + 1 : 0,
    earned: KEPT * (before?.earned ?? 0) + share,
    evidence: evidenceAfter(before?.evidence ?? 0, reviews, weight),
    circuits,
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

/** Whether the answers so far are enough to go on to what stands on it. */
export const isShown = (recall: Recall): boolean => recall.kind === 'begun' && recall.evidence >= SHOWN_AT;

/** Whether the answers so far say that it can be done, beyond luck. */
export const isProven = (recall: Recall): boolean => recall.kind === 'begun' && recall.evidence >= PROVEN_AT;

/**
 * Whether a learner can do it now: proven, and not forgotten since. Both are needed. The model's first estimate comes
 * from one answer, which luck could give; and a proof of last year says little of today.
 */
export const isHeld = (recall: Recall, at: number, target: number = TARGET): boolean =>
  isProven(recall) && retrievability(recall, at) >= target;

/** Whether what stands on it may be begun: shown, and not forgotten since. */
export const carries = (recall: Recall, at: number, target: number = TARGET): boolean =>
  isShown(recall) && retrievability(recall, at) >= target;
