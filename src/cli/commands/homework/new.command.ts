import { type Command, Option } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../program.ts';
import type { NewOptions } from './new.ts';
import { withStoreOptions } from './store-options.ts';

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
    .action(async (className: string, options: NewOptions) => {
      const { draft } = await import('./new.ts');
      running.code = await draft(className, options, io);
    });
}
