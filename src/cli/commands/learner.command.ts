import type { Command } from 'commander';
import { commandIn, helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { EraseOptions, ExportOptions, LearnerOptions } from './learner.ts';

export function addLearner(program: Command, io: Io): void {
  const {
    learner: { help },
    given,
    values,
  } = io.words;
  const learner = commandIn(program, 'learner', help);
  const data = `--data <${values.folder}>`;
  const dataText = given.options.dataOfServeAndDrill;

  commandIn(learner, 'list', help.list)
    .option(data, dataText)
    .addHelpText('after', helpAfter(io, ['polewise learner list']))
    .action(async (options: LearnerOptions) => {
      const { listLearners } = await import('./learner.ts');
      await listLearners(options, io);
    });

  commandIn(learner, 'export', help.export)
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

  commandIn(learner, 'erase', help.erase)
    .argument(`<${values.learner}>`, help.erase.learner)
    .option('--yes', help.erase.yes)
    .option(data, dataText)
    .addHelpText('after', helpAfter(io, ['polewise learner erase me']))
    .action(async (name: string, options: EraseOptions) => {
      const { eraseLearner } = await import('./learner.ts');
      await eraseLearner(name, options, io);
    });
}
