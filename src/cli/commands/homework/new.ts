import { type HomeworkWish, homeworkWish } from '../../../../shared/homework-views.ts';
import type { Desk } from '../../../server/homework/desk.ts';
import { draftSet } from '../../../server/homework/sets.ts';
import { counted } from '../../counted.ts';
import { type Io, UsageError } from '../../io.ts';
import { wholeNumber } from '../../numbers.ts';
import { findClass } from './find.ts';
import { issueAndPrepare } from './issue.ts';
import { momentIn, momentText } from './moments.ts';
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

function wishIn(options: NewOptions, now: number): HomeworkWish {
  const { title, topic = [], skill = [], level, counts, review, hints = false, supervised = false } = options;
  if (topic.length + skill.length === 0)
    throw new UsageError('Nothing is asked.', 'Name what it is about with --topic or --skill.');
  const opensAt = momentIn('--opens', options.opens, now);
  const wish = homeworkWish.safeParse({
    title,
    topics: topic,
    skills: skill,
    items: wholeNumber('--items', options.items, { low: 1, high: 60, example: 10 }),
    level,
    marksEach: wholeNumber('--marks', options.marks, { low: 1, high: 100, example: 2 }),
    opensAt,
    closesAt: momentIn('--closes', options.closes, opensAt),
    attempts: wholeNumber('--attempts', options.attempts, { low: 1, high: 10, example: 2 }),
    counts,
    help: hints ? 'hints' : 'none',
    review,
    supervised,
  });
  if (wish.success) return wish.data;
  const [issue] = wish.error.issues;
  throw new UsageError(
    `The set can't be like this. At ${issue?.path.join('.')}: ${issue?.message}.`,
    'polewise homework new --help says what can be given.',
  );
}

/** Throws when a topic or a skill isn't in the banks, and names those that are. */
function checkNames({ course }: Desk, { topics, skills }: HomeworkWish): void {
  const known = course.bank.topics;
  const topic = topics.find((id) => !known.some((each) => each.id === id));
  if (topic !== undefined)
    throw new UsageError(
      `There is no topic ${topic}.`,
      `There are:\n${known.map(({ id, title }) => `    ${id}  ${title}`).join('\n')}`,
    );
  const skill = skills.find((id) => !course.skills.has(id));
  if (skill !== undefined)
    throw new UsageError(
      `There is no skill ${skill}.`,
      `There are:\n${[...course.skills].map(([id, { title }]) => `    ${id}  ${title}`).join('\n')}`,
    );
}

/** Makes a draft, and issues it where that is wanted at once; gives the exit code. */
export async function draft(className: string, options: NewOptions, io: Io): Promise<number> {
  const wish = wishIn(options, io.now());
  return withDesk(io, options, async (desk) => {
    const found = await findClass(desk.store, className);
    checkNames(desk, wish);
    const { set } = await draftSet(desk, AT_THE_TERMINAL, found.id, wish);
    const skills = [...new Set(set.places.map(({ skill }) => skill))];
    io.out(`${set.title}: ${counted(set.places.length, 'item')} on ${skills.join(', ')}.`);
    io.out(`Open from ${momentText(set.opensAt)} until ${momentText(set.closesAt)}.`);
    if (options.issue) return issueAndPrepare(io, desk, set.id, options);
    io.out('It is a draft; nobody else sees it yet.');
    io.out(`    polewise homework sample ${set.id}    shows a paper as a learner would get one`);
    io.out(`    polewise homework issue ${set.id}     issues it`);
    return 0;
  });
}
