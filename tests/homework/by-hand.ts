/** Marked papers put together by hand, so that what follows from them is known without any circuit. */
import type { ItemMark, PaperMark } from '../../shared/homework.ts';

export interface Given {
  readonly skill?: string;
  readonly marks?: number;
  /** Share that is right, 0 to 1; 1 unless it is given. */
  readonly share?: number;
  readonly answered?: ItemMark['answered'];
  readonly ideas?: readonly string[];
  readonly overrides?: ItemMark['overrides'];
}

const itemOf = ({
  skill = 'make-contact',
  marks = 2,
  share = 1,
  answered = 'all',
  ideas = [],
  overrides = [],
}: Given): ItemMark => ({
  skill,
  circuit: 'c',
  marks,
  answered,
  hint: false,
  secondsUsed: null,
  mark: { share, correct: share === 1, parts: [], misconceptions: [...ideas] },
  overrides,
});

export const markOf = (learner: string, items: readonly Given[], attempt = 1): PaperMark => ({
  set: 'week-40',
  learner,
  attempt,
  items: items.map(itemOf),
});
