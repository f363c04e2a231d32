import type { Command } from 'commander';
import { commandIn, helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { ReportOptions } from './report.ts';
import { withStoreOptions } from './store-options.ts';

export function addReport(homework: Command, io: Io): void {
  const { given, values } = io.words;
  const help = io.words.homeworkReport.help.report;
  withStoreOptions(
    commandIn(homework, 'report', help)
      .argument(`<${values.set}>`, given.arguments.set)
      .option('--json', help.json),
    io.words,
  )
    .addHelpText('after', helpAfter(io, ['polewise homework report "Week 40"']))
    .action(async (name: string, options: ReportOptions) => {
      const { printReport } = await import('./report.ts');
      await printReport(name, options, io);
    });
}
