import type { Command } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { DrillOptions } from './drill.ts';

export function addDrill(program: Command, io: Io): void {
  program
    .command('drill')
    .summary('practise in the terminal')
    .description(
      'Asks question after question on fresh circuits, marks each, says why, and brings each skill back in time.',
    )
    .option('--count <number>', 'how many questions', '10')
    .option('--skill <id>', 'only this skill')
    .option('--seed <text>', 'the same seed asks the same questions of the same learner')
    .option('--place', 'find first where to begin, in at most eight questions')
    .option('--data <folder>', 'where answers are kept (default: the data folder that serve uses)')
    .option('--banks <folder>', 'question banks to practise from instead of those that come with the program')
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise drill',
          'polewise drill --count 5',
          'polewise drill --skill changeover-legs --seed monday',
          'polewise drill --place',
        ],
        'At the prompt: an answer, ? for a hint, pass to see the answer, stop to end. Every answer that has been marked is kept, also when you end with Ctrl-C. With DATABASE_URL set answers are kept in that PostgreSQL database.',
      ),
    )
    .action(async (options: DrillOptions) => {
      const { drill } = await import('./drill.ts');
      await drill(options, io);
    });
}
