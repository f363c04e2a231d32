import type { Command } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../program.ts';
import { type StoreOptions, withStoreOptions } from './store-options.ts';

export function addIssue(homework: Command, io: Io, running: Running): void {
  withStoreOptions(
    homework
      .command('issue')
      .summary('issue a set to its class')
      .description(
        'Issues a set and makes a paper for every learner. Whoever joins later gets one on beginning. Twice is once, so it can be stopped and run again.',
      )
      .argument('<set>', 'the set, by its title, words of it, or id'),
  )
    .addHelpText('after', helpAfter(io, ['polewise homework issue "Week 40"']))
    .action(async (name: string, options: StoreOptions) => {
      const { issue } = await import('./issue.ts');
      running.code = await issue(name, options, io);
    });
}
