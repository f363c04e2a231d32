/** Wrong ideas that answers showed, over one paper or a whole class. */
import type { PaperMark } from '../../../shared/homework.ts';

export interface ShownIdea {
  readonly id: string;
  /** Answers that this idea alone explains. */
  readonly times: number;
  /** Learners who gave one. */
  readonly learners: readonly string[];
  /** Where it showed: the learner's paper and the index of the item. */
  readonly shownIn: readonly { readonly learner: string; readonly item: number }[];
}

/**
 * The commonest first: by learners, then by answers, then by name. An answer that several ideas explain speaks for none of
 * them in particular and isn't counted.
 */
export function ideasIn(marks: Iterable<PaperMark>): readonly ShownIdea[] {
  const found = new Map<string, ShownIdea['shownIn'][number][]>();
  for (const { learner, items } of marks) {
    items.forEach(({ mark: { misconceptions } }, item) => {
      const [id, another] = misconceptions;
      if (id === undefined || another !== undefined) return;
      const shownIn = found.get(id) ?? [];
      shownIn.push({ learner, item });
      found.set(id, shownIn);
    });
  }
  return [...found]
    .map(([id, shownIn]) => ({
      id,
      times: shownIn.length,
      learners: [...new Set(shownIn.map(({ learner }) => learner))],
      shownIn,
    }))
    .sort(
      (one, other) =>
        other.learners.length - one.learners.length ||
        other.times - one.times ||
        (one.id < other.id ? -1 : 1),
    );
}
