import type { Command } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { BackupOptions } from './backup.ts';

export function addBackup(program: Command, io: Io): void {
  program
    .command('backup')
    .summary('copy everything that is kept into one file')
    .description('Copies the store into one new file, also while the server or a drill is using it.')
    .argument('<file>', 'the file to make; it must not be there yet')
    .option('--data <folder>', 'the data folder (default: the one that serve and drill use)')
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise backup polewise-monday.sqlite',
          'polewise backup /media/stick/polewise.sqlite --data /srv/polewise',
        ],
        'To put a backup back: stop the server, and copy the file over practice.sqlite in the data folder (docs/backup.md).',
      ),
    )
    .action(async (file: string, options: BackupOptions) => {
      const { backUp } = await import('./backup.ts');
      await backUp(file, options, io);
    });
}
