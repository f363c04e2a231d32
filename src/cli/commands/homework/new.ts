import { type Command, Option } from 'commander';
import { type HomeworkWish, homeworkWish } from '../../../../shared/homework-views.ts';
import type { Desk } from '../../../server/homework/desk.ts';
import { draftSet } from '../../../server/homework/sets.ts';
import { counted } from '../../counted.ts';
import { helpAfter } from '../../help.ts';
import { type Io, UsageError } from '../../io.ts';
import { wholeNumber } from '../../numbers.ts';
import type { Running } from '../../program.ts';
import { findClass } from './find.ts';
import { issueAndPrepare } from './issue.ts';
import { momentIn, momentText } from './moments.ts';
import { AT_THE_TERMINAL, type StoreOptions, withDesk, withStoreOptions } from './with-desk.ts';

interface Options extends StoreOptions {
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

function wishIn(options: Options, now: number): HomeworkWish {
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

async function draft(className: string, options: Options, io: Io, running: Running): Promise<void> {
  const wish = wishIn(options, io.now());
  await withDesk(io, options, async (desk) => {
    const found = await findClass(desk.store, className);
    checkNames(desk, wish);
    const { set } = await draftSet(desk, AT_THE_TERMINAL, found.id, wish);
    const skills = [...new Set(set.places.map(({ skill }) => skill))];
    io.out(`${set.title}: ${counted(set.places.length, 'item')} on ${skills.join(', ')}.`);
    io.out(`Open from ${momentText(set.opensAt)} until ${momentText(set.closesAt)}.`);
    if (options.issue) {
      running.code = await issueAndPrepare(io, desk, set.id, options);
      return;
    }
    io.out('It is a draft; nobody else sees it yet.');
    io.out(`    polewise homework sample ${set.id}    shows a paper as a learner would get one`);
    io.out(`    polewise homework issue ${set.id}     issues it`);
  });
}

export function addNew(homework: Command, io: Io, running: Running): void {
  withStoreOptions(
    homework
      .command('new')
      .summary('draft a set')
      .description('Makes a draft: what is asked, how often, and when it is open.')
      .argument('<class>', 'the class, by its title, words of it, or id')
      .requiredOption('--title <text>', 'what learners see it called')
      .option('--topic <id...>', 'every skill of this topic; may be given several times')
      .option('--skill <id...>', 'this skill; may be given several times')
      .option('--items <number>', 'how many items a paper has', '10')
      .addOption(
        new Option('--level <level>', 'how large the circuits are')
          .choices(['small', 'middle', 'large'])
          .default('middle'),
      )
      .option('--marks <number>', 'marks for each item', '1')
      .option('--opens <time>', 'when it opens: now, +2d, "2026-03-02 08:00"', 'now')
      .option('--closes <time>', 'when it closes: +7d after it opens, "2026-03-09 18:00"', '+7d')
      .option('--attempts <number>', 'how often each learner may try', '1')
      .addOption(
        new Option('--counts <which>', 'which attempt counts').choices(['best', 'last']).default('best'),
      )
      .option('--hints', 'let learners ask for hints')
      .addOption(
        new Option('--review <when>', 'when learners may look through the marked paper')
          .choices(['after-submitting', 'after-closing', 'never'])
          .default('after-closing'),
      )
      .option('--supervised', 'somebody watches the class at work; evidence says so')
      .option('--issue', 'issue it at once'),
  )
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise homework new "Autumn fitters" --title "Week 40" --topic changeover-pole',
          'polewise homework new "Autumn fitters" --title "Week 41" --skill seal-in-holds --items 12 \\\n--opens "2026-10-05 08:00" --closes "2026-10-09 18:00" --review after-submitting --issue',
        ],
        'Times are in the time zone of this machine.',
      ),
    )
    .action((className: string, options: Options) => draft(className, options, io, running));
}
