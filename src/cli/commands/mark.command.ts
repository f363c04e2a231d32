import type { Command } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../program.ts';
import type { MarkOptions } from './mark.ts';

export function addMark(program: Command, io: Io, running: Running): void {
  program
    .command('mark')
    .summary('mark an answer')
    .description(
      'Marks an answer to a question: part by part, the wrong idea behind it, and why the right answer is right.',
    )
    .argument('<file>', 'a question as `ask` prints it, with or without an answer; - for standard input')
    .option('--answer <text>', 'the answer as one would type it in the drill')
    .option('--json', 'print the mark as JSON')
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise mark question.json --answer "H1 lit, H2 dark"',
          'polewise ask --seed 7 --with-answer | polewise mark - --json',
        ],
        "Exit code 0 whether the answer is right or wrong; 2 when the question or the answer can't be read.",
      ),
    )
    .action(async (file: string, options: MarkOptions) => {
      const { markFile } = await import('./mark.ts');
      running.code = await markFile(file, options, io);
    });
}
