import type { Command } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { EraseOptions, ExportOptions, LearnerOptions } from './learner.ts';

export function addLearner(program: Command, io: Io): void {
  const learner = program
    .command('learner')
    .summary('what is kept about somebody')
    .description('Shows who answers are kept of, gives out everything about one of them, or erases it.');
  const data = '--data <folder>';
  const dataText = 'the data folder (default: the one that serve and drill use)';

  learner
    .command('list')
    .summary('name everyone of whom something is kept')
    .description('Names everyone of whom something is kept, and how many answers that is.')
    .option(data, dataText)
    .addHelpText('after', helpAfter(io, ['polewise learner list']))
    .action(async (options: LearnerOptions) => {
      const { listLearners } = await import('./learner.ts');
      await listLearners(options, io);
    });

  learner
    .command('export')
    .summary('give out everything about one learner')
    .description('Gives out everything that is kept about one learner, as JSON.')
    .argument('[learner]', 'who; on a machine of your own that is me', 'me')
    .option('--out <file>', 'a new file to write it to, instead of printing it')
    .option(data, dataText)
    .addHelpText(
      'after',
      helpAfter(io, ['polewise learner export --out mine.json', 'polewise learner export me | less']),
    )
    .action(async (name: string, options: ExportOptions) => {
      const { exportLearner } = await import('./learner.ts');
      await exportLearner(name, options, io);
    });

  learner
    .command('erase')
    .summary('erase everything about one learner')
    .description('Erases everything that is kept about one learner, for good. Backups are not touched.')
    .argument('<learner>', 'who')
    .option('--yes', 'without asking once more')
    .option(data, dataText)
    .addHelpText('after', helpAfter(io, ['polewise learner erase me']))
    .action(async (name: string, options: EraseOptions) => {
      const { eraseLearner } = await import('./learner.ts');
      await eraseLearner(name, options, io);
    });
}
