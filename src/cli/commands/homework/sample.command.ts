import type { Command } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { SampleOptions } from './sample.ts';
import { withStoreOptions } from './store-options.ts';

export function addSample(homework: Command, io: Io): void {
  withStoreOptions(
    homework
      .command('sample')
      .summary('show a paper as a learner would get one')
      .description('Prints a paper of the set that nobody gets, with the right answers.')
      .argument('<set>', 'the set, by its title, words of it, or id')
      .option('--number <number>', 'another number gives another paper', '1'),
  )
    .addHelpText('after', helpAfter(io, ['polewise homework sample "Week 40" --number 2 | less']))
    .action(async (name: string, options: SampleOptions) => {
      const { printSample } = await import('./sample.ts');
      await printSample(name, options, io);
    });
}
