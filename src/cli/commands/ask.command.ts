import type { Command } from 'commander';
import { QUESTION_KINDS } from '../../../shared/question-kinds.ts';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { AskOptions } from './ask.ts';

export function addAsk(program: Command, io: Io): void {
  let families = '';
  const ask = program
    .command('ask')
    .summary('a fresh question as JSON')
    .description(
      'Prints a fresh question as JSON: circuit, scenario, the question in words. Its answer is left out.',
    )
    .option('--skill <id>', 'a question for this skill of the banks')
    .option('--family <id>', `a circuit of this family (default: status-pair)`)
    .option('--kind <kind>', `ask this: ${QUESTION_KINDS.join(', ')}`)
    .option('--size <number>', 'how big, 1 to 8', '3')
    .option('--seed <text>', 'the same seed gives the same question on every machine')
    .option('--with-answer', 'print the right answer too')
    .option('--banks <folder>', 'question banks for --skill')
    .addHelpText('after', () =>
      helpAfter(
        io,
        [
          'polewise ask --family seal-in --kind sequence --seed 7 > question.json',
          'polewise ask --skill changeover-legs',
          'polewise ask --with-answer',
        ],
        `Families: ${families}.`,
      ),
    )
    .action(async (options: AskOptions) => {
      const { printQuestion } = await import('./ask.ts');
      await printQuestion(options, io);
    });
  // Its help names the families, which nothing else of the command line does.
  program.hook('preSubcommand', async (_, chosen) => {
    if (chosen === ask) families = (await import('./ask.ts')).familyNames;
  });
}
