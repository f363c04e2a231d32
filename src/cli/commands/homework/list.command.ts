import type { Command } from 'commander';
import { commandIn, helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import { type StoreOptions, withStoreOptions } from './store-options.ts';

export function addList(homework: Command, io: Io): void {
  const { given, values } = io.words;
  const help = io.words.homework.help.list;
  withStoreOptions(
    commandIn(homework, 'list', help).argument(`<${values.class}>`, given.arguments.class),
    io.words,
  )
    .addHelpText('after', helpAfter(io, ['polewise homework list "Autumn fitters"']))
    .action(async (name: string, options: StoreOptions) => {
      const { listSets } = await import('./list.ts');
      await listSets(name, options, io);
    });
}
