import type { SetReport } from '../../../../shared/homework-views.ts';
import type { Desk } from '../../../server/homework/desk.ts';
import { setReport } from '../../../server/homework/reports/set-report.ts';
import type { Io } from '../../io.ts';
import { progressBar } from '../../progress-bar.ts';
import { findSet } from './find.ts';
import { reportText } from './report-text.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, withDesk } from './with-desk.ts';

export interface ReportOptions extends StoreOptions {
  readonly json?: boolean;
}

/** The report when everything that was handed in is marked. */
async function wholeReport(io: Io, desk: Desk, set: string): Promise<SetReport> {
  const bar = progressBar(io, io.words.progress.papersMarked);
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

/** Marks what was handed in, and prints what the set says of its class. */
export const printReport = (name: string, options: ReportOptions, io: Io): Promise<void> =>
  withDesk(io, options, async (desk) => {
    const { set } = await findSet(desk.store, name, io.words);
    const report = await wholeReport(io, desk, set.id);
    io.out(options.json ? JSON.stringify(report, null, 2) : reportText(report, io));
  });
