/** A set as it stands in the form, and the wish that it becomes. */
import type { Bank } from '../../../../../shared/bank.ts';
import type { HomeworkWish } from '../../../../../shared/homework-views.ts';
import { beginsFormula } from '../../../../../shared/new-names.ts';
import { words } from '../../../words.ts';
import { fieldText, momentOf, typedMoment, usualTimes } from '../moments.ts';

/** As the contract has it. */
const MOST_SKILLS = 40;

export interface SetDraft {
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
export function freshDraft(now: number): SetDraft {
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
export function draftOf(wish: HomeworkWish, { topics }: Bank): SetDraft {
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
export function wishOf(draft: SetDraft): HomeworkWish | { readonly problem: string } {
  const { problems } = words('sets').form;
  const { title, skills, level, counts, help, review, supervised } = draft;
  const [items, marksEach, attempts] = [draft.items, draft.marksEach, draft.attempts].map(Number);
  const leftOut = [draft.opensAt, draft.closesAt].find((text) => typedMoment(text).kind === 'left-out');
  const opensAt = momentOf(draft.opensAt);
  const closesAt = momentOf(draft.closesAt);
  if (title.trim() === '') return { problem: problems.noTitle };
  if (beginsFormula(title)) return { problem: problems.formula };
  if (skills.length === 0) return { problem: problems.noSkill };
  if (skills.length > MOST_SKILLS) return { problem: problems.manySkills(MOST_SKILLS) };
  if (leftOut !== undefined)
    return {
      problem: problems.leftOut({ day: leftOut.slice(0, 10), time: leftOut.slice(11, 16) }),
    };
  if (opensAt === undefined || closesAt === undefined) return { problem: problems.noTimes };
  if (closesAt <= opensAt) return { problem: problems.closesFirst };
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
