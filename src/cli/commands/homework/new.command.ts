import { type Command, Option } from 'commander';
import { commandIn, helpAfter, severalOf } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../running.ts';
import type { NewOptions } from './new.ts';
import { withStoreOptions } from './store-options.ts';

export function addNew(homework: Command, io: Io, running: Running): void {
  const { given, values } = io.words;
  const help = io.words.homework.help.new;
  withStoreOptions(
    commandIn(homework, 'new', help)
      .argument(`<${values.class}>`, given.arguments.class)
      .requiredOption(`--title <${values.text}>`, help.options.title)
      .addOption(severalOf('--topic', values.id, help.options.topic))
      .addOption(severalOf('--skill', values.id, help.options.skill))
      .option(`--items <${values.number}>`, help.options.items, '10')
      .addOption(
        new Option(`--level <${values.level}>`, help.options.level)
          .choices(['small', 'middle', 'large'])
          .default('middle'),
      )
      .option(`--marks <${values.number}>`, help.options.marks, '1')
      .option(`--opens <${values.time}>`, help.options.opens, 'now')
      .option(`--closes <${values.time}>`, help.options.closes, '+7d')
      .option(`--attempts <${values.number}>`, help.options.attempts, '1')
      .addOption(
        new Option(`--counts <${values.which}>`, help.options.counts)
          .choices(['best', 'last'])
          .default('best'),
      )
      .option('--hints', help.options.hints)
      .addOption(
        new Option(`--review <${values.when}>`, help.options.review)
          .choices(['after-submitting', 'after-closing', 'never'])
          .default('after-closing'),
      )
      .option('--supervised', help.options.supervised)
      .option('--issue', help.options.issue),
    io.words,
  )
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise homework new "Autumn fitters" --title "Week 40" --topic changeover-pole',
          'polewise homework new "Autumn fitters" --title "Week 41" --skill seal-in-holds --items 12 \\\n--opens "2026-10-05 08:00" --closes "2026-10-09 18:00" --review after-submitting --issue',
        ],
        help.note,
      ),
    )
    .action(async (className: string, options: NewOptions) => {
      const { draft } = await import('./new.ts');
      running.code = await draft(className, options, io);
    });
}
