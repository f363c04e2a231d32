import type { Command } from 'commander';
import { commandIn, helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../running.ts';
import { type StoreOptions, withStoreOptions } from './store-options.ts';

export function addIssue(homework: Command, io: Io, running: Running): void {
  const { given, values } = io.words;
  const help = io.words.homework.help.issue;
  withStoreOptions(
    commandIn(homework, 'issue', help).argument(`<${values.set}>`, given.arguments.set),
    io.words,
  )
    .addHelpText('after', helpAfter(io, ['polewise homework issue "Week 40"']))
    .action(async (name: string, options: StoreOptions) => {
      const { issue } = await import('./issue.ts');
      running.code = await issue(name, options, io);
    });
}
