import type { Command } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import { type StoreOptions, withStoreOptions } from './store-options.ts';

export function addList(homework: Command, io: Io): void {
  withStoreOptions(
    homework
      .command('list')
      .summary('list the sets of a class')
      .description('Lists the sets of a class, the newest first.')
      .argument('<class>', 'the class, by its title, words of it, or id'),
  )
    .addHelpText('after', helpAfter(io, ['polewise homework list "Autumn fitters"']))
    .action(async (name: string, options: StoreOptions) => {
      const { listSets } = await import('./list.ts');
      await listSets(name, options, io);
    });
}
