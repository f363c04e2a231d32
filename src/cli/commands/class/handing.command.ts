import type { Command } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../program.ts';
import type { RosterOptions, SlipOptions } from './handing.ts';
import { ADDRESS_OPTION, DATA_OPTION } from './options.ts';

export function addHanding(group: Command, io: Io, running: Running): void {
  group
    .command('slips')
    .summary('write slips to hand out')
    .description('Writes slips to cut apart and hand out, as a PDF.')
    .argument('<class>', 'title, words of it, or id')
    .requiredOption('--out <file>', 'the PDF to write')
    .option('--links', 'with a name and a link each, for all who have no password yet')
    .option('--count <number>', 'how many slips with the code')
    .option(...ADDRESS_OPTION)
    .option(...DATA_OPTION)
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

  group
    .command('roster')
    .summary('take people over, or give them out')
    .description('Takes people over into a class, or gives them out.')
    .argument('<class>', 'title, words of it, or id')
    .option(
      '--in <path>',
      'a .csv with the column name, or the folder of a OneRoster 1.1 export; - is standard input',
    )
    .option('--source <id>', 'which class of the export, by its sourcedId')
    .option('--look', 'only say what would come of it')
    .option('--out <file>', 'a .csv, or a .zip with OneRoster 1.1')
    .option(...DATA_OPTION)
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
