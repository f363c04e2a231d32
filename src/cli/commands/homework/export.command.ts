import { type Command, Option } from 'commander';
import { commandIn, helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { ExportOptions } from './export.ts';
import { withStoreOptions } from './store-options.ts';

export function addExport(homework: Command, io: Io): void {
  const { given, values } = io.words;
  const help = io.words.homeworkReport.help.export;
  withStoreOptions(
    commandIn(homework, 'export', help)
      .argument(`<${values.set}>`, given.arguments.set)
      .argument(`<${values.file}>`, help.file)
      .addOption(new Option(`--qti <${values.version}>`, help.qti).choices(['3.0', '2.2']).default('3.0'))
      .option(`--base <${values.address}>`, help.base),
    io.words,
  )
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise homework export "Week 40" marks.csv',
          'polewise homework export "Week 40" statements.json --base https://drawings.example',
          'polewise homework export "Week 40" package.zip --qti 2.2',
        ],
        help.note,
      ),
    )
    .action(async (name: string, file: string, options: ExportOptions) => {
      const { exportSet } = await import('./export.ts');
      await exportSet(name, file, options, io);
    });
}
