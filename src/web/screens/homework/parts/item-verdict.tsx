import type { VNode } from 'preact';
import type { ToldItemMark } from '../../../../../shared/homework.ts';
import { words } from '../../../words.ts';

/** In a field: to a hundredth, and no more places than there are. */
export const shownMarks = (marks: number): string => String(Math.round(100 * marks) / 100);

/** What an item earned: the latest of a tutor's own marks holds, otherwise the share of the first mark. */
export const earnedIn = ({ overrides, mark, marks }: ToldItemMark): number =>
  overrides.at(-1)?.earned ?? Math.round(100 * mark.share * marks) / 100;

/** That, and of how many. */
export const earnedOf = (mark: ToldItemMark): { readonly earned: number; readonly outOf: number } => ({
  earned: earnedIn(mark),
  outOf: mark.marks,
});

export const earnedText = (mark: ToldItemMark): string => words('homework').marked.earned(earnedOf(mark));

/** Said of an item that earned less or more than it was first marked with, was left out, or was helped with. */
export function itemVerdict(mark: ToldItemMark): VNode {
  const { verdict: w } = words('homework').marked;
  const { answered, hint, overrides } = mark;
  const stands = answered === 'none' ? w.notAnswered : mark.mark.correct ? w.right : w.notAllRight;
  return (
    <>
      <p class={mark.mark.correct ? 'verdict right' : 'verdict wrong'}>{stands(earnedOf(mark))}</p>
      {hint && <p>{w.hint}</p>}
      {overrides.map(({ earned, reason, at }) => (
        <p key={at} class="because">
          {w.byTutor({ at, earned, reason })}
        </p>
      ))}
    </>
  );
}
