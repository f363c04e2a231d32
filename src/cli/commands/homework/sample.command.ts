import type { Command } from 'commander';
import { commandIn, helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { SampleOptions } from './sample.ts';
import { withStoreOptions } from './store-options.ts';

export function addSample(homework: Command, io: Io): void {
  const { given, values } = io.words;
  const help = io.words.homework.help.sample;
  withStoreOptions(
    commandIn(homework, 'sample', help)
      .argument(`<${values.set}>`, given.arguments.set)
      .option(`--number <${values.number}>`, help.number, '1'),
    io.words,
  )
    .addHelpText('after', helpAfter(io, ['polewise homework sample "Week 40" --number 2 | less']))
    .action(async (name: string, options: SampleOptions) => {
      const { printSample } = await import('./sample.ts');
      await printSample(name, options, io);
    });
}
