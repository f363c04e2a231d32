/** A set as it stands in the form, and the wish that it becomes. */
import type { Bank } from '../../../../../shared/bank.ts';
import type { HomeworkWish } from '../../../../../shared/homework-views.ts';
import { beginsFormula, NO_FORMULA } from '../../../../../shared/new-names.ts';
import { fieldText, momentOf, typedMoment, usualTimes } from '../moments.ts';

export interface Draft {
  readonly title: string;
  readonly skills: readonly string[];
  /** As they were typed. */
  readonly items: string;
  readonly marksEach: string;
  readonly attempts: string;
  readonly opensAt: string;
  readonly closesAt: string;
  readonly level: HomeworkWish['level'];
  readonly counts: HomeworkWish['counts'];
  readonly help: HomeworkWish['help'];
  readonly review: HomeworkWish['review'];
  readonly supervised: boolean;
}

/** What a set is mostly like: open from now for a week, ten items, one attempt, no help, marks after closing. */
export function freshDraft(now: number): Draft {
  const { opensAt, closesAt } = usualTimes(now);
  return {
    title: '',
    skills: [],
    items: '10',
    marksEach: '1',
    attempts: '1',
    opensAt: fieldText(opensAt),
    closesAt: fieldText(closesAt),
    level: 'middle',
    counts: 'best',
    help: 'none',
    review: 'after-closing',
    supervised: false,
  };
}

/** A wish as it was kept; topics become their skills. */
export function draftOf(wish: HomeworkWish, { topics }: Bank): Draft {
  const ofTopics = topics
    .filter(({ id }) => wish.topics.includes(id))
    .flatMap(({ skills }) => skills.map(({ id }) => id));
  return {
    title: wish.title,
    skills: [...new Set([...ofTopics, ...wish.skills])],
    items: String(wish.items),
    marksEach: String(wish.marksEach),
    attempts: String(wish.attempts),
    opensAt: fieldText(wish.opensAt),
    closesAt: fieldText(wish.closesAt),
    level: wish.level,
    counts: wish.counts,
    help: wish.help,
    review: wish.review,
    supervised: wish.supervised,
  };
}

/** What is sent, or what is still wrong with it, in words. */
export function wishOf(draft: Draft): HomeworkWish | { readonly problem: string } {
  const { title, skills, level, counts, help, review, supervised } = draft;
  const [items, marksEach, attempts] = [draft.items, draft.marksEach, draft.attempts].map(Number);
  const leftOut = [draft.opensAt, draft.closesAt].find((text) => typedMoment(text).kind === 'left-out');
  const opensAt = momentOf(draft.opensAt);
  const closesAt = momentOf(draft.closesAt);
  if (title.trim() === '') return { problem: 'Give the set a title.' };
  if (beginsFormula(title)) return { problem: `A title ${NO_FORMULA}.` };
  if (skills.length === 0) return { problem: 'Choose at least one skill.' };
  if (skills.length > 40) return { problem: 'Choose at most 40 skills.' };
  if (leftOut !== undefined)
    return {
      problem: `There is no ${leftOut.slice(11, 16)} on ${leftOut.slice(0, 10)}: the clocks are put forward over it. Choose another time.`,
    };
  if (opensAt === undefined || closesAt === undefined)
    return { problem: 'Say when the set opens and when it closes.' };
  if (closesAt <= opensAt)
    return { problem: 'The set closes before it opens. Choose a closing time that is later.' };
  return {
    title: title.trim(),
    topics: [],
    skills: [...skills],
    items: items ?? 0,
    level,
    marksEach: marksEach ?? 1,
    opensAt,
    closesAt,
    attempts: attempts ?? 1,
    counts,
    help,
    review,
    supervised,
  };
}
