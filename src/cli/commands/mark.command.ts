import type { Command } from 'commander';
import { commandIn, helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../running.ts';
import type { MarkOptions } from './mark.ts';

export function addMark(program: Command, io: Io, running: Running): void {
  const {
    mark: { help },
    values,
  } = io.words;
  commandIn(program, 'mark', help)
    .argument(`<${values.file}>`, help.file)
    .option(`--answer <${values.text}>`, help.options.answer)
    .option('--json', help.options.json)
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise mark question.json --answer "H1 lit, H2 dark"',
          'polewise ask --seed 7 --with-answer | polewise mark - --json',
        ],
        help.note,
      ),
    )
    .action(async (file: string, options: MarkOptions) => {
      const { markFile } = await import('./mark.ts');
      running.code = await markFile(file, options, io);
    });
}
