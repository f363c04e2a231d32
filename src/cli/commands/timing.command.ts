import { type Command, Option } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../program.ts';
import type { TimingOptions } from './timing.ts';

export function addTiming(program: Command, io: Io, running: Running): void {
  program
    .command('timing')
    .summary('what happens when, as a diagram')
    .description('Draws what every coil, lamp and input does over time, while acts are done and timers run.')
    .argument('<file>', 'a circuit in the notation or in JSON; - for standard input')
    .requiredOption('--do <acts>', 'what is done, in order')
    .option('--fault <fault...>', 'what is wrong from the start')
    .option('-o, --output <file>', 'write to this .svg or .pdf; without it the diagram is shown as text')
    .addOption(new Option('--width <width>', 'laid out for').choices(['phone', 'screen', 'a4']))
    .addHelpText(
      'after',
      helpAfter(io, [
        'polewise timing fan.txt --do "make -B1; wait 6 s; break -B1"',
        'polewise timing fan.txt --do "make -B1; wait 6 s; break -B1" -o timing.svg',
      ]),
    )
    .action(async (file: string, options: TimingOptions) => {
      const { drawTiming } = await import('./timing.ts');
      running.code = await drawTiming(file, options, io);
    });
}
