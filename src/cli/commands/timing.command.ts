import { type Command, Option } from 'commander';
import { commandIn, helpAfter, severalOf } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../running.ts';
import type { TimingOptions } from './timing.ts';

export function addTiming(program: Command, io: Io, running: Running): void {
  const {
    timing: { help },
    given,
    values,
  } = io.words;
  commandIn(program, 'timing', help)
    .argument(`<${values.file}>`, given.arguments.circuit)
    .requiredOption(`--do <${values.acts}>`, given.options.acts)
    .addOption(severalOf('--fault', values.fault, given.options.fault))
    .option('--operate-times', help.options.operateTimes)
    .option(`-o, --output <${values.file}>`, help.options.output)
    .addOption(
      new Option(`--width <${values.width}>`, given.options.width).choices(['phone', 'screen', 'a4']),
    )
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
