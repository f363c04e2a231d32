import type { Command } from 'commander';
import type { SetReport } from '../../../../shared/homework-views.ts';
import type { Desk } from '../../../server/homework/desk.ts';
import { setReport } from '../../../server/homework/reports.ts';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import { progressBar } from '../../progress-bar.ts';
import { findSet } from './find.ts';
import { reportText } from './report-text.ts';
import { AT_THE_TERMINAL, type StoreOptions, withDesk, withStoreOptions } from './with-desk.ts';

interface Options extends StoreOptions {
  readonly json?: boolean;
}

/** The report when everything that was handed in is marked. */
async function wholeReport(io: Io, desk: Desk, set: string): Promise<SetReport> {
  const bar = progressBar(io, 'Papers marked');
  try {
    for (let most = 0; ; ) {
      const report = await setReport(desk, AT_THE_TERMINAL, set);
      if (report.waiting === 0) return report;
      most = Math.max(most, report.waiting);
      bar.show(most - report.waiting, most);
    }
  } finally {
    bar.end();
  }
}

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
    .action((name: string, options: Options) =>
      withDesk(io, options, async (desk) => {
        const { set } = await findSet(desk.store, name);
        const report = await wholeReport(io, desk, set.id);
        io.out(options.json ? JSON.stringify(report, null, 2) : reportText(report, io));
      }),
    );
}
