import type { Command } from 'commander';
import { commandIn, helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../running.ts';
import type { RebuildOptions } from './rebuild.ts';

export function addRebuild(program: Command, io: Io, running: Running): void {
  const {
    rebuild: { help },
    given,
    values,
  } = io.words;
  commandIn(program, 'rebuild', help)
    .option('--check', help.options.check)
    .option('--marks', help.options.marks)
    .option('--restored', help.options.restored)
    .option(`--data <${values.folder}>`, given.options.dataOfServeAndDrill)
    .addHelpText(
      'after',
      helpAfter(
        io,
        ['polewise rebuild', 'polewise rebuild --check', 'polewise rebuild --marks --data /srv/polewise'],
        help.note,
      ),
    )
    .action(async (options: RebuildOptions) => {
      const { rebuild } = await import('./rebuild.ts');
      running.code = await rebuild(options, io);
    });
}
