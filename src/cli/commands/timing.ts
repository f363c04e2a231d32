import { type Command, Option } from 'commander';
import { timingPicture, timingText, type Width } from '../../drawing/index.ts';
import { givenCircuit, type ScenarioOptions } from '../given-circuit.ts';
import { helpAfter } from '../help.ts';
import { type Io, UsageError } from '../io.ts';
import type { Running } from '../program.ts';
import { asciiOnly } from '../style.ts';
import { checkNoWidth, writePictures } from '../written.ts';

interface Options extends ScenarioOptions {
  readonly width?: Width;
  readonly output?: string;
}

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
    .action(async (file: string, options: Options) => {
      const given = await givenCircuit(io, file, options);
      if (!given) {
        running.code = 2;
        return;
      }
      const { circuit, scenario } = given;
      if (scenario.acts.length === 0)
        throw new UsageError('--do has no acts, so nothing happens.', 'For example --do "wait 5 s".');
      if (options.output === undefined) {
        checkNoWidth(options.width);
        io.out(timingText(circuit, scenario, { columns: io.columns, ascii: asciiOnly(io) }));
        return;
      }
      const width = options.width ?? (/\.pdf$/i.test(options.output) ? 'a4' : 'screen');
      await writePictures(io, [timingPicture(circuit, scenario, { width })], {
        file: options.output,
        title: `Timing: ${circuit.title ?? 'control circuit'}`,
        paper: width === 'a4',
      });
    });
}
