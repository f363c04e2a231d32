import type { Command } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { ReportOptions } from './report.ts';
import { withStoreOptions } from './store-options.ts';

export function addReport(homework: Command, io: Io): void {
  withStoreOptions(
    homework
      .command('report')
      .summary('what a set says of its class')
      .description(
        'Marks what was handed in, and tells skills by learners, wrong ideas, what each place told, and whom to look after.',
      )
      .argument('<set>', 'the set, by its title, words of it, or id')
      .option('--json', 'the whole report as JSON, with the drawings on which wrong ideas showed'),
  )
    .addHelpText('after', helpAfter(io, ['polewise homework report "Week 40"']))
    .action(async (name: string, options: ReportOptions) => {
      const { printReport } = await import('./report.ts');
      await printReport(name, options, io);
    });
}
