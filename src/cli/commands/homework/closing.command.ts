import type { Command } from 'commander';
import { commandIn, helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import { type StoreOptions, withStoreOptions } from './store-options.ts';

export function addClosing(homework: Command, io: Io): void {
  const { given, values } = io.words;
  const help = io.words.homework.help.closing;
  withStoreOptions(
    commandIn(homework, 'closing', help)
      .argument(`<${values.set}>`, given.arguments.set)
      .argument(`<${values.time}>`, help.time),
    io.words,
  )
    .addHelpText('after', helpAfter(io, ['polewise homework closing "Week 40" +1d']))
    .action(async (name: string, time: string, options: StoreOptions) => {
      const { letCloseLater } = await import('./closing.ts');
      await letCloseLater(name, time, options, io);
    });
}
