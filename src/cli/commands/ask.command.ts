import type { Command } from 'commander';
import { QUESTION_KINDS } from '../../../shared/question-kinds.ts';
import { commandIn, helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { AskOptions } from './ask.ts';

export function addAsk(program: Command, io: Io): void {
  const { ask: said, values } = io.words;
  const { help } = said;
  let families: readonly string[] = [];
  const ask = commandIn(program, 'ask', help)
    .option(`--skill <${values.id}>`, help.options.skill)
    .option(`--family <${values.id}>`, help.options.family('status-pair'))
    .option(`--kind <${values.kind}>`, help.options.kind(QUESTION_KINDS))
    .option(`--size <${values.number}>`, help.options.size, '3')
    .option(`--seed <${values.text}>`, help.options.seed)
    .option('--with-answer', help.options.withAnswer)
    .option(`--banks <${values.folder}>`, help.options.banks)
    .addHelpText('after', () =>
      helpAfter(
        io,
        [
          'polewise ask --family seal-in --kind sequence --seed 7 > question.json',
          'polewise ask --skill changeover-legs',
          'polewise ask --with-answer',
        ],
        said.families(families),
      ),
    )
    .action(async (options: AskOptions) => {
      const { printQuestion } = await import('./ask.ts');
      await printQuestion(options, io);
    });
  // Its help names the families, which nothing else of the command line does.
  program.hook('preSubcommand', async (_, chosen) => {
    if (chosen === ask) families = (await import('./ask.ts')).FAMILY_NAMES;
  });
}
