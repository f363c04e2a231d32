import { type Command, Option } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { ExportOptions } from './export.ts';
import { withStoreOptions } from './store-options.ts';

export function addExport(homework: Command, io: Io): void {
  withStoreOptions(
    homework
      .command('export')
      .summary('marks, statements or a package as a file')
      .description(
        'Writes the marks as a table (.csv), as xAPI statements (.json), or the sample paper as a QTI package (.zip).',
      )
      .argument('<set>', 'the set, by its title, words of it, or id')
      .argument('<file>', 'its name says what it is: marks.csv, statements.json, package.zip')
      .addOption(new Option('--qti <version>', 'of a package').choices(['3.0', '2.2']).default('3.0'))
      .option('--base <address>', 'where this installation is found, for statements'),
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
        'docs/interchange.md says what is in them.',
      ),
    )
    .action(async (name: string, file: string, options: ExportOptions) => {
      const { exportSet } = await import('./export.ts');
      await exportSet(name, file, options, io);
    });
}
