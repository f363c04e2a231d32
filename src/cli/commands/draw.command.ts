import { type Command, Option } from 'commander';
import { commandIn, helpAfter, severalOf } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../running.ts';
import type { DrawOptions } from './draw.ts';

export function addDraw(program: Command, io: Io, running: Running): void {
  const {
    draw: { help },
    given,
    values,
  } = io.words;
  commandIn(program, 'draw', help)
    .argument(`<${values.file}>`, given.arguments.circuit)
    .option(`-o, --output <${values.file}>`, help.options.output)
    .option(`--do <${values.acts}>`, help.options.acts)
    .addOption(severalOf('--fault', values.fault, given.options.fault))
    .option('--steps', help.options.steps)
    .option(`--sheet <${values.number}>`, help.options.sheet)
    .addOption(
      new Option(`--width <${values.width}>`, given.options.width).choices(['phone', 'screen', 'a4']),
    )
    .addOption(
      new Option(`--letters <${values.letters}>`, help.options.letters)
        .choices(['as-written', 'old', 'new'])
        .default('as-written'),
    )
    .addHelpText(
      'after',
      helpAfter(io, [
        'polewise draw fan.txt',
        'polewise draw fan.txt --do "make -B1"',
        'polewise draw fan.txt -o fan.svg --do "make -B1"',
        'polewise draw fan.txt -o fan.pdf --letters new',
        'polewise draw fan.txt --steps --do "make -B1; break -B1" -o steps.pdf',
      ]),
    )
    .action(async (file: string, options: DrawOptions) => {
      const { drawFile } = await import('./draw.ts');
      running.code = await drawFile(file, options, io);
    });
}
