import type { Command } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../program.ts';
import type { MarksOptions } from './mark.ts';
import { withStoreOptions } from './store-options.ts';

export function addMarks(homework: Command, io: Io, running: Running): void {
  withStoreOptions(
    homework
      .command('mark')
      .summary('type in the marks of papers that were written on paper')
      .description(
        'Takes marks by the code of the paper: one line in the command, a file of lines, or typed one after another.',
      )
      .argument('<set>', 'the set, by its title, words of it, or id')
      .argument('[code]', 'the code on the paper')
      .argument('[marks...]', 'a mark for each item in order; - for one that was left out')
      .option('--from <file>', 'lines of code and marks; - reads standard input'),
  )
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise homework mark "Week 40" K7M2QP9DX 2 1.5 - 2',
          'polewise homework mark "Week 40" --from marks.txt',
          'polewise homework mark "Week 40"',
        ],
        'Marks typed again stand beside the earlier ones, and the latest hold.',
      ),
    )
    .action(async (name: string, code: string | undefined, marks: string[], options: MarksOptions) => {
      const { takeMarks } = await import('./mark.ts');
      running.code = await takeMarks(name, code === undefined ? [] : [code, ...marks], options, io);
    });
}
