import type { Command } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import { type StoreOptions, withStoreOptions } from './store-options.ts';

export function addClosing(homework: Command, io: Io): void {
  withStoreOptions(
    homework
      .command('closing')
      .summary('let a set close later')
      .description('Gives a set that is issued and has not closed a later closing time, for everybody.')
      .argument('<set>', 'the set, by its title, words of it, or id')
      .argument('<time>', 'a time such as "2026-03-09 18:00", or +2d for two days after the time it has'),
  )
    .addHelpText('after', helpAfter(io, ['polewise homework closing "Week 40" +1d']))
    .action(async (name: string, time: string, options: StoreOptions) => {
      const { letCloseLater } = await import('./closing.ts');
      await letCloseLater(name, time, options, io);
    });
}
