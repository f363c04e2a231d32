import { type HomeworkWish, homeworkWish } from '../../../../shared/homework-views.ts';
import type { Desk } from '../../../server/homework/desk.ts';
import { draftSet } from '../../../server/homework/sets.ts';
import type { CommandWords } from '../../../words/commands.ts';
import { formSaid } from '../../../words/form-said.ts';
import { type Io, UsageError } from '../../io.ts';
import { wholeNumber } from '../../numbers.ts';
import { findClass } from './find.ts';
import { issueAndPrepare } from './issue.ts';
import { momentIn } from './moments.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, withDesk } from './with-desk.ts';

export interface NewOptions extends StoreOptions {
  readonly title: string;
  readonly topic?: readonly string[];
  readonly skill?: readonly string[];
  readonly items: string;
  readonly level: HomeworkWish['level'];
  readonly marks: string;
  readonly opens: string;
  readonly closes: string;
  readonly attempts: string;
  readonly counts: HomeworkWish['counts'];
  readonly hints?: boolean;
  readonly review: HomeworkWish['review'];
  readonly supervised?: boolean;
  readonly issue?: boolean;
}

function wishIn(options: NewOptions, io: Io): HomeworkWish {
  const { homework: said } = io.words;
  const now = io.now();
  const { title, topic = [], skill = [], level, counts, review, hints = false, supervised = false } = options;
  if (topic.length + skill.length === 0)
    throw new UsageError(said.nothingAsked.wrong, said.nothingAsked.right);
  const opensAt = momentIn(io.words, '--opens', options.opens, now);
  const given = {
    title,
    topics: topic,
    skills: skill,
    items: wholeNumber(io, '--items', options.items, { low: 1, high: 60, example: 10 }),
    level,
    marksEach: wholeNumber(io, '--marks', options.marks, { low: 1, high: 100, example: 2 }),
    opensAt,
    closesAt: momentIn(io.words, '--closes', options.closes, opensAt),
    attempts: wholeNumber(io, '--attempts', options.attempts, { low: 1, high: 10, example: 2 }),
    counts,
    help: hints ? 'hints' : 'none',
    review,
    supervised,
  };
  const wish = homeworkWish.safeParse(given);
  if (wish.success) return wish.data;
  throw new UsageError(
    said.notLikeThis.wrong(formSaid(wish.error.issues[0]!, given)),
    said.notLikeThis.right,
  );
}

/** Throws when a topic or a skill isn't in the banks, and names those that are. */
function checkNames(
  { course }: Desk,
  { topics, skills }: HomeworkWish,
  { course: said }: CommandWords,
): void {
  const known = course.bank.topics;
  const topic = topics.find((id) => !known.some((each) => each.id === id));
  if (topic !== undefined)
    throw new UsageError(
      said.noTopic(topic),
      `${said.thereAre}\n${known.map(({ id, title }) => `    ${id}  ${title}`).join('\n')}`,
    );
  const skill = skills.find((id) => !course.skills.has(id));
  if (skill !== undefined)
    throw new UsageError(
      said.noSkill.wrong(skill),
      `${said.thereAre}\n${[...course.skills].map(([id, { title }]) => `    ${id}  ${title}`).join('\n')}`,
    );
}

/** Makes a draft, and issues it where that is wanted at once; gives the exit code. */
export async function draft(className: string, options: NewOptions, io: Io): Promise<number> {
  const wish = wishIn(options, io);
  return withDesk(io, options, async (desk) => {
    const found = await findClass(desk.store, className, io.words);
    checkNames(desk, wish, io.words);
    const { set } = await draftSet(desk, AT_THE_TERMINAL, found.id, wish);
    const skills = [...new Set(set.places.map(({ skill }) => skill))];
    const { homework: said, moments } = io.words;
    io.out(said.itemsOn({ title: set.title, count: set.places.length, skills }));
    io.out(said.openFrom({ opens: moments.moment(set.opensAt), closes: moments.moment(set.closesAt) }));
    if (options.issue) return issueAndPrepare(io, desk, set.id, options);
    io.out(said.isADraft);
    io.out(`    polewise homework sample ${set.id}    ${said.next.sample}`);
    io.out(`    polewise homework issue ${set.id}     ${said.next.issue}`);
    return 0;
  });
}
