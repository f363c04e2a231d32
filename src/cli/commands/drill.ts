import type { Command } from 'commander';
import { openCourse } from '../course.ts';
import { runDrill } from '../drill/drill.ts';
import { helpAfter } from '../help.ts';
import { type Io, UsageError } from '../io.ts';
import { wholeNumber } from '../numbers.ts';
import type { Running } from '../program.ts';
import { withNewStore } from '../store-place.ts';

interface Options {
  readonly seed?: string;
  readonly skill?: string;
  readonly place?: boolean;
  readonly count: string;
  readonly data?: string;
  readonly banks?: string;
}

export function addDrill(program: Command, io: Io, _running: Running): void {
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
    .action(async (options: Options) => {
      const count = wholeNumber('--count', options.count, { low: 1, high: 1000, example: 10 });
      const course = await openCourse(io, options.banks);
      if (options.skill !== undefined && !course.skills.has(options.skill)) {
        throw new UsageError(
          `There is no skill ${options.skill}.`,
          `Skills: ${[...course.skills.keys()].join(', ')}.`,
        );
      }
      if (options.skill !== undefined && options.place)
        throw new UsageError(
          '--place finds where to begin among all skills.',
          'Leave out --skill, or leave out --place.',
        );
      const seed = options.seed ?? io.freshSeed();
      await withNewStore(io, options.data, (store) =>
        runDrill(
          {
            course,
            store,
            seed,
            count,
            ...(options.skill ? { skill: options.skill } : {}),
            ...(options.place ? { place: true } : {}),
          },
          io,
        ),
      );
    });
}
