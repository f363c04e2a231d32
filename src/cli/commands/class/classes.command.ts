import type { Command } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { CodeOptions, NewOptions } from './classes.ts';
import { DATA_OPTION, type DataOption } from './options.ts';

/** Making classes, looking at them, and their codes. */
export function addClasses(group: Command, io: Io): void {
  group
    .command('new')
    .summary('make a class')
    .description('Makes a class, with a code by which learners join it.')
    .argument('<title>', 'what it is called')
    .option('--intake <name>', 'which group of newcomers it is')
    .option('--tutor <person>', 'whose class it is: id, name for signing in, or name')
    .option(...DATA_OPTION)
    .addHelpText(
      'after',
      helpAfter(io, ['polewise class new "Flour line" --intake "Autumn 2026" --tutor tilda']),
    )
    .action(async (title: string, options: NewOptions) => {
      const { makeClass } = await import('./classes.ts');
      await makeClass(title, options, io);
    });

  group
    .command('list')
    .summary('name all classes')
    .description('Names all classes, with how many learners each has.')
    .option(...DATA_OPTION)
    .addHelpText('after', helpAfter(io, ['polewise class list']))
    .action(async (options: DataOption) => {
      const { listClasses } = await import('./classes.ts');
      await listClasses(options, io);
    });

  group
    .command('show')
    .summary('show who is in a class')
    .description('Shows who is in a class.')
    .argument('<class>', 'title, words of it, or id')
    .option(...DATA_OPTION)
    .addHelpText('after', helpAfter(io, ['polewise class show "Flour line"']))
    .action(async (name: string, options: DataOption) => {
      const { showClass } = await import('./classes.ts');
      await showClass(name, options, io);
    });

  group
    .command('code')
    .summary('show or change the joining code')
    .description('Shows the joining code of a class, or changes it.')
    .argument('<class>', 'title, words of it, or id')
    .option('--fresh', 'another code; the one so far no longer works')
    .option('--close', 'nobody may join from now on')
    .option('--open', 'may be joined again')
    .option(...DATA_OPTION)
    .addHelpText(
      'after',
      helpAfter(io, ['polewise class code "Flour line"', 'polewise class code "Flour line" --fresh']),
    )
    .action(async (name: string, options: CodeOptions) => {
      const { changeCode } = await import('./classes.ts');
      await changeCode(name, options, io);
    });
}
