import type { HomeworkSet, PaperMark } from '../../../shared/homework.ts';
import { countingAttempt, marksFromShort } from '../../homework/index.ts';
import type { PaperHead } from '../../store/index.ts';

export interface Counting {
  readonly head: PaperHead;
  readonly mark: PaperMark;
}

/** Of each learner the attempt that counts, from short marks. */
export function countingIn(set: HomeworkSet, heads: readonly PaperHead[]): ReadonlyMap<string, Counting> {
  const attempts = new Map<string, Counting[]>();
  const markOf = marksFromShort(set);
  for (const head of heads) {
    if (head.set !== set.id || head.short === null) continue;
    const own = attempts.get(head.learner);
    const attempt = { head, mark: markOf(head, head.short) };
    if (own) own.push(attempt);
    else attempts.set(head.learner, [attempt]);
  }
  return new Map(
    [...attempts].map(([learner, own]) => {
      const mark = countingAttempt(
        set,
        own.map((attempt) => attempt.mark),
      );
      return [learner, own.find((attempt) => attempt.mark === mark)!];
    }),
  );
}
