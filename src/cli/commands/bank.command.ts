import type { Command } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../program.ts';

/** `bank check`, and whatever else is done to banks. */
export function addBank(program: Command, io: Io, running: Running): void {
  const bank = program
    .command('bank')
    .summary('question banks')
    .description('What authors of question banks need.');
  bank
    .command('check')
    .summary('tell every mistake')
    .description(
      'Reads question banks and tells every mistake: where it is, what is wrong and what would be right.',
    )
    .argument(
      '[path...]',
      'files and folders, read as one bank (default: the banks that come with the program)',
    )
    .addHelpText(
      'after',
      helpAfter(
        io,
        ['polewise bank check', 'polewise bank check my-banks/ more/interlocks.md'],
        'Exit code 0 without mistakes, 2 with. docs/writing-a-bank.md says how to write one.',
      ),
    )
    .action(async (paths: string[]) => {
      const { bankCheck } = await import('./bank.ts');
      running.code = await bankCheck(paths, io);
    });
}
