import type { Command } from 'commander';
import { commandIn, helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../running.ts';
import type { RosterOptions, SlipOptions } from './handing.ts';
import { addressOption, dataOption } from './options.ts';

export function addHanding(group: Command, io: Io, running: Running): void {
  const {
    class: { help },
    given,
    values,
  } = io.words;
  commandIn(group, 'slips', help.slips)
    .argument(`<${values.class}>`, given.arguments.classOfPeople)
    .requiredOption(`--out <${values.file}>`, help.slips.out)
    .option('--links', help.slips.links)
    .option(`--count <${values.number}>`, help.slips.count)
    .option(...addressOption(io.words))
    .option(...dataOption(io.words))
    .addHelpText(
      'after',
      helpAfter(io, [
        'polewise class slips "Flour line" --out slips.pdf',
        'polewise class slips "Flour line" --out slips.pdf --links --address https://practice.example',
      ]),
    )
    .action(async (name: string, options: SlipOptions) => {
      const { writeSlips } = await import('./handing.ts');
      await writeSlips(name, options, io);
    });

  commandIn(group, 'roster', help.roster)
    .argument(`<${values.class}>`, given.arguments.classOfPeople)
    .option(`--in <${values.path}>`, help.roster.in)
    .option(`--source <${values.id}>`, help.roster.source)
    .option('--look', help.roster.look)
    .option(`--out <${values.file}>`, help.roster.out)
    .option(...dataOption(io.words))
    .addHelpText(
      'after',
      helpAfter(io, [
        'polewise class roster "Flour line" --in names.csv --look',
        'polewise class roster "Flour line" --out class.zip',
      ]),
    )
    .action(async (name: string, options: RosterOptions) => {
      const { handRoster } = await import('./handing.ts');
      running.code = await handRoster(name, options, io);
    });
}
