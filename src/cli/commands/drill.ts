import type { Command } from 'commander';
import { openSqliteStore } from '../../store/index.ts';
import { openCourse } from '../course.ts';
import { runDrill } from '../drill/drill.ts';
import { practiceFile } from '../files.ts';
import { type Io, UsageError } from '../io.ts';
import { wholeNumber } from '../numbers.ts';
import type { Running } from '../program.ts';

interface Options {
  readonly seed?: string;
  readonly skill?: string;
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
    .option('--data <file>', 'where answers are kept (default: practice.sqlite in the data folder)')
    .option('--banks <folder>', 'question banks to practise from instead of those that come with the program')
    .addHelpText(
      'after',
      `
Examples:
  polewise drill
  polewise drill --count 5
  polewise drill --skill changeover-read --seed monday

At the prompt: an answer, ? for a hint, pass to see the answer, stop to end. Every answer that has been marked is
kept, also when you end with Ctrl-C.`,
    )
    .action(async (options: Options) => {
      const count = wholeNumber('--count', options.count, 1, 1000);
      const course = openCourse(io, options.banks);
      if (options.skill !== undefined && !course.skills.has(options.skill)) {
        throw new UsageError(
          `There is no skill ${options.skill}.`,
          `Skills: ${[...course.skills.keys()].join(', ')}.`,
        );
      }
      const file = practiceFile(io, options.data);
      const store = await openSqliteStore(file).catch((error: unknown) => {
        throw new UsageError(
          `Answers can't be kept in ${file}: ${error instanceof Error ? error.message : String(error)}.`,
          'Name another file with --data.',
        );
      });
      try {
        const seed = options.seed ?? io.freshSeed();
        await runDrill(
          { course, store, seed, count, ...(options.skill ? { skill: options.skill } : {}) },
          io,
        );
      } finally {
        await store.close();
      }
    });
}
