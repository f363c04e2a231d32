import type { Command } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { EraseOptions, ExportOptions, LearnerOptions } from './learner.ts';

export function addLearner(program: Command, io: Io): void {
  const {
    learner: { help },
    given,
    values,
  } = io.words;
  const learner = program.command('learner').summary(help.summary).description(help.description);
  const data = `--data <${values.folder}>`;
  const dataText = given.options.dataOfServeAndDrill;

  learner
    .command('list')
    .summary(help.list.summary)
    .description(help.list.description)
    .option(data, dataText)
    .addHelpText('after', helpAfter(io, ['polewise learner list']))
    .action(async (options: LearnerOptions) => {
      const { listLearners } = await import('./learner.ts');
      await listLearners(options, io);
    });

  learner
    .command('export')
    .summary(help.export.summary)
    .description(help.export.description)
    .argument(`[${values.learner}]`, help.export.learner, 'me')
    .option(`--out <${values.file}>`, help.export.out)
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
    .summary(help.erase.summary)
    .description(help.erase.description)
    .argument(`<${values.learner}>`, help.erase.learner)
    .option('--yes', help.erase.yes)
    .option(data, dataText)
    .addHelpText('after', helpAfter(io, ['polewise learner erase me']))
    .action(async (name: string, options: EraseOptions) => {
      const { eraseLearner } = await import('./learner.ts');
      await eraseLearner(name, options, io);
    });
}
