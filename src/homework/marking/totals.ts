/** What a marked paper comes to, a tutor's overrides included. */
import type { HomeworkSet, ItemMark, Override, PaperMark } from '../../../shared/homework.ts';
import type { Checked } from '../../../shared/problem.ts';
import { homeworkProblem } from '../problem-codes.ts';

/** Marks earned by an item: what the tutor gave, else the share of its marks that is right, to a hundredth. */
export function earnedOf({ marks, mark, overrides }: ItemMark): number {
  const [latest] = overrides.slice(-1);
  return latest ? latest.earned : Math.round(mark.share * marks * 100) / 100;
}

export interface Total {
  readonly earned: number;
  readonly outOf: number;
  /** 0 to 1. */
  readonly share: number;
  /** Items answered wholly, or in part. */
  readonly answered: number;
  readonly items: number;
}

export function totalOf({ items }: PaperMark): Total {
  const earned = Math.round(items.reduce((sum, item) => sum + earnedOf(item), 0) * 100) / 100;
  const outOf = items.reduce((sum, { marks }) => sum + marks, 0);
  return {
    earned,
    outOf,
    share: earned / outOf,
    answered: items.filter(({ answered }) => answered !== 'none').length,
    items: items.length,
  };
}

/**
 * A paper's mark with a tutor's own mark for one item. The first mark and every earlier override stay in it.
 *
 * Fails with `homework-no-such-item` and `homework-too-many-marks`.
 * @param item - index in the paper
 */
export function overrideMark(paper: PaperMark, item: number, override: Override): Checked<PaperMark> {
  const old = paper.items[item];
  if (!old)
    return {
      ok: false,
      problems: [
        homeworkProblem({ says: 'homework-no-such-item', item: item + 1, items: paper.items.length }),
      ],
    };
  if (override.earned > old.marks)
    return {
      ok: false,
      problems: [
        homeworkProblem({
          says: 'homework-too-many-marks',
          item: item + 1,
          given: override.earned,
          marks: old.marks,
        }),
      ],
    };
  const changed = { ...old, overrides: [...old.overrides, override] };
  return { ok: true, value: { ...paper, items: paper.items.with(item, changed) } };
}

/**
 * The attempt of a learner that counts. `best`: the one with most marks, of equal ones the earlier. `last`: the one with
 * the highest number among those given. Undefined without any.
 */
export function countingAttempt(
  { counts }: Pick<HomeworkSet, 'counts'>,
  attempts: readonly PaperMark[],
): PaperMark | undefined {
  const inOrder = attempts.toSorted((one, other) => one.attempt - other.attempt);
  if (counts === 'last') return inOrder.at(-1);
  let best: PaperMark | undefined;
  for (const attempt of inOrder) if (!best || totalOf(attempt).earned > totalOf(best).earned) best = attempt;
  return best;
}
