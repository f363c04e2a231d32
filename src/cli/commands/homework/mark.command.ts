import type { Command } from 'commander';
import { commandIn, helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../running.ts';
import type { MarksOptions } from './mark.ts';
import { withStoreOptions } from './store-options.ts';

export function addMarks(homework: Command, io: Io, running: Running): void {
  const { given, values } = io.words;
  const help = io.words.homeworkPapers.help.mark;
  withStoreOptions(
    commandIn(homework, 'mark', help)
      .argument(`<${values.set}>`, given.arguments.set)
      .argument(`[${values.code}]`, help.code)
      .argument(`[${values.marks}...]`, help.marks)
      .option(`--from <${values.file}>`, help.from),
    io.words,
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
        help.note,
      ),
    )
    .action(async (name: string, code: string | undefined, marks: string[], options: MarksOptions) => {
      const { takeMarks } = await import('./mark.ts');
      running.code = await takeMarks(name, code === undefined ? [] : [code, ...marks], options, io);
    });
}
