/** Which of the answers that were saved on the way count. */
import type { HomeworkSet, SavedAnswer } from '../../../shared/homework.ts';

/**
 * By item, the answer that counts: the last one saved before the set closed. Answers of the same moment count in the order
 * given; the same answer saved again changes nothing. What arrived at closing time or later doesn't count, however it got
 * there.
 */
export function countedAnswers(
  { closesAt }: Pick<HomeworkSet, 'closesAt'>,
  saved: Iterable<SavedAnswer>,
): ReadonlyMap<number, SavedAnswer> {
  const counted = new Map<number, SavedAnswer>();
  for (const one of saved) {
    if (one.at >= closesAt) continue;
    const before = counted.get(one.item);
    if (!before || one.at >= before.at) counted.set(one.item, one);
  }
  return counted;
}
