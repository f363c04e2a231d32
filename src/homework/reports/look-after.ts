/** Learners a tutor should speak to, by a rule that is told with the reason. */
import type { PaperMark } from '../../../shared/homework.ts';
import { totalOf } from '../marking/totals.ts';
import { ideasIn } from './ideas.ts';

/** Below this share of the marks. Common practice, no source. */
export const LOW_SHARE = 0.5;
/** This many answers that one wrong idea alone explains: it is firm, and practice won't cure it. */
export const FIRM_IDEA = 3;

export type Concern =
  | { readonly kind: 'nothing-handed-in' }
  /** Fewer than half of the items answered, wholly or in part. */
  | { readonly kind: 'half-left-out'; readonly answered: number; readonly items: number }
  | { readonly kind: 'low-marks'; readonly share: number }
  | { readonly kind: 'firm-idea'; readonly id: string; readonly times: number };

export interface LookAfter {
  readonly learner: string;
  readonly concerns: readonly Concern[];
}

function concernsIn(mark: PaperMark | undefined, waits: boolean): Concern[] {
  if (!mark) return waits ? [] : [{ kind: 'nothing-handed-in' }];
  const { share, answered, items } = totalOf(mark);
  return [
    ...(2 * answered < items ? [{ kind: 'half-left-out' as const, answered, items }] : []),
    ...(share < LOW_SHARE ? [{ kind: 'low-marks' as const, share }] : []),
    ...ideasIn([mark])
      .filter(({ times }) => times >= FIRM_IDEA)
      .map(({ id, times }) => ({ kind: 'firm-idea' as const, id, times })),
  ];
}

/**
 * In the order of the class; who gives no concern isn't in it. For a set that has closed: before, there is time left.
 *
 * @param waiting - whose papers are handed in and have still to be marked
 */
export const lookAfter = (
  learners: readonly string[],
  marks: ReadonlyMap<string, PaperMark>,
  waiting: ReadonlySet<string>,
): readonly LookAfter[] =>
  learners.flatMap((learner) => {
    const concerns = concernsIn(marks.get(learner), waiting.has(learner));
    return concerns.length > 0 ? [{ learner, concerns }] : [];
  });
