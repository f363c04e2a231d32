import { type Command, Option } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../program.ts';
import type { DrawOptions } from './draw.ts';

export function addDraw(program: Command, io: Io, running: Running): void {
  program
    .command('draw')
    .summary('a circuit as a drawing')
    .description(
      'Draws a circuit at rest, or as it stands after acts: as SVG, as PDF, or as text in the terminal.',
    )
    .argument('<file>', 'a circuit in the notation or in JSON; - for standard input')
    .option('-o, --output <file>', 'write to this .svg or .pdf; without it the drawing is shown as text')
    .option('--do <acts>', 'show the state after these acts')
    .option('--fault <fault...>', 'what is wrong from the start')
    .option('--steps', 'one picture for each moment on the way')
    .option('--sheet <number>', 'only this sheet')
    .addOption(new Option('--width <width>', 'laid out for').choices(['phone', 'screen', 'a4']))
    .addOption(
      new Option('--letters <letters>', 'letter codes of designations')
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
