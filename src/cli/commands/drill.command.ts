import type { Command } from 'commander';
import { commandIn, helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { DrillOptions } from './drill.ts';

export function addDrill(program: Command, io: Io): void {
  const {
    drill: { help },
    given,
    values,
  } = io.words;
  commandIn(program, 'drill', help)
    .option(`--count <${values.number}>`, help.options.count, '10')
    .option(`--skill <${values.id}>`, help.options.skill)
    .option(`--seed <${values.text}>`, help.options.seed)
    .option('--place', help.options.place)
    .option(`--data <${values.folder}>`, help.options.data)
    .option(`--banks <${values.folder}>`, given.options.ownBanks)
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise drill',
          'polewise drill --count 5',
          'polewise drill --skill changeover-legs --seed monday',
          'polewise drill --place',
        ],
        help.note,
      ),
    )
    .action(async (options: DrillOptions) => {
      const { drill } = await import('./drill.ts');
      await drill(options, io);
    });
}
