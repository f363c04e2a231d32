import type { Command } from 'commander';
import { commandIn, helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../running.ts';

/** `bank check`, and whatever else is done to banks. */
export function addBank(program: Command, io: Io, running: Running): void {
  const {
    bank: { help },
    values,
  } = io.words;
  const bank = commandIn(program, 'bank', help);
  commandIn(bank, 'check', help.check)
    .argument(`[${values.path}...]`, help.check.path)
    .addHelpText(
      'after',
      helpAfter(
        io,
        ['polewise bank check', 'polewise bank check my-banks/ more/interlocks.md'],
        help.check.note,
      ),
    )
    .action(async (paths: string[]) => {
      const { bankCheck } = await import('./bank.ts');
      running.code = await bankCheck(paths, io);
    });
}
