import type { Command } from 'commander';
import { commandIn, helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { BackupOptions } from './backup.ts';

export function addBackup(program: Command, io: Io): void {
  const {
    backup: { help },
    given,
    values,
  } = io.words;
  commandIn(program, 'backup', help)
    .argument(`<${values.file}>`, help.file)
    .option(`--data <${values.folder}>`, given.options.dataOfServeAndDrill)
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise backup polewise-monday.sqlite',
          'polewise backup /media/stick/polewise.sqlite --data /srv/polewise',
        ],
        help.note,
      ),
    )
    .action(async (file: string, options: BackupOptions) => {
      const { backUp } = await import('./backup.ts');
      await backUp(file, options, io);
    });
}
