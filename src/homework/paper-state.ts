/** Where one paper stands at a moment; everything that may be done with it follows from that. */
import type { HomeworkSet } from '../../shared/homework.ts';
import { phaseOf } from './set.ts';

/** What was done with a paper so far. */
export interface PaperTimes {
  readonly begunAt: number | null;
  readonly submittedAt: number | null;
  readonly markedAt: number | null;
  /** How many answers were saved. */
  readonly saves: number;
}

/**
 * `made`: not begun. `working`: answers are taken. `handed-in`: submitted, or closed with answers saved; it is marked.
 * `nothing`: closed without.
 */
export type PaperState = 'made' | 'working' | 'handed-in' | 'nothing';

/** A paper that was marked stays handed in, even when the clock is set back to before closing time. */
export function paperStateOf(set: HomeworkSet, paper: PaperTimes, at: number): PaperState {
  if (paper.submittedAt !== null || paper.markedAt !== null) return 'handed-in';
  const phase = phaseOf(set, at);
  if (phase === 'closed') return paper.saves > 0 ? 'handed-in' : 'nothing';
  return paper.begunAt === null ? 'made' : 'working';
}

/** A learner's attempt that goes on, or the number of the one that comes next; null when there are no more. */
export function nextAttempt<P extends PaperTimes & { readonly attempt: number }>(
  set: HomeworkSet,
  papers: readonly P[],
  at: number,
): { readonly goOn: P } | { readonly begin: number } | null {
  const inOrder = papers.toSorted((one, other) => one.attempt - other.attempt);
  const last = inOrder.at(-1);
  if (last && paperStateOf(set, last, at) !== 'handed-in') return { goOn: last };
  const next = (last?.attempt ?? 0) + 1;
  return next <= set.attempts ? { begin: next } : null;
}

/**
 * Whether a paper's answers go to the memory now. What is in the memory can be looked up by its learner, so not before
 * he may look through the paper; where he never may, when the set has closed.
 */
export function mayRemember(set: HomeworkSet, at: number): boolean {
  return set.review === 'after-submitting' || phaseOf(set, at) === 'closed';
}
