import type { Command } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../program.ts';
import type { RebuildOptions } from './rebuild.ts';

export function addRebuild(program: Command, io: Io, running: Running): void {
  program
    .command('rebuild')
    .summary('work out anew what follows from the answers')
    .description(
      'Works out anew, from the answers alone, what each learner remembers. Answers are never changed by it.',
    )
    .option('--check', 'only look: is everything that is kept whole and consistent?')
    .option('--marks', 'mark every answer again with the solver first')
    .option('--restored', 'a backup was put back: let devices send again what they have')
    .option('--data <folder>', 'the data folder (default: the one that serve and drill use)')
    .addHelpText(
      'after',
      helpAfter(
        io,
        ['polewise rebuild', 'polewise rebuild --check', 'polewise rebuild --marks --data /srv/polewise'],
        'Exit code 1 when --check finds something.',
      ),
    )
    .action(async (options: RebuildOptions) => {
      const { rebuild } = await import('./rebuild.ts');
      running.code = await rebuild(options, io);
    });
}
