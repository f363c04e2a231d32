import type { VNode } from 'preact';
import type { ItemMark } from '../../../../../shared/homework.ts';
import { dayText } from '../moments.ts';

/** To a hundredth, and no more places than there are. */
export const shownMarks = (marks: number): string => String(Math.round(100 * marks) / 100);

/** What an item earned: the latest of a tutor's own marks holds, otherwise the share of the first mark. */
export const earnedIn = ({ overrides, mark, marks }: ItemMark): number =>
  overrides.at(-1)?.earned ?? Math.round(100 * mark.share * marks) / 100;

export const earnedText = (mark: ItemMark): string =>
  `${shownMarks(earnedIn(mark))} of ${mark.marks === 1 ? '1 mark' : `${mark.marks} marks`}`;

/** Said of an item that earned less or more than it was first marked with, was left out, or was helped with. */
export function itemVerdict(mark: ItemMark): VNode {
  const { answered, hint, overrides } = mark;
  return (
    <>
      <p class={mark.mark.correct ? 'verdict right' : 'verdict wrong'}>
        {answered === 'none' ? 'Not answered.' : mark.mark.correct ? 'Right.' : 'Not all right.'}{' '}
        {earnedText(mark)}.
      </p>
      {hint && <p>The hint was asked for.</p>}
      {overrides.map(({ earned, reason, at }) => (
        <p key={at} class="because">
          Marked by the tutor on {dayText(at)} with {shownMarks(earned)}: {reason}
        </p>
      ))}
    </>
  );
}
