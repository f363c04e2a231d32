import type { Command } from 'commander';
import { commandIn, helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../running.ts';
import type { PapersOptions } from './papers.ts';
import { withStoreOptions } from './store-options.ts';

export function addPapers(homework: Command, io: Io, running: Running): void {
  const { given, values } = io.words;
  const help = io.words.homeworkPapers.help.papers;
  withStoreOptions(
    commandIn(homework, 'papers', help)
      .argument(`<${values.set}>`, given.arguments.set)
      .option(`--out <${values.file}>`, help.out)
      .option(`--key <${values.file}>`, help.key),
    io.words,
  )
    .addHelpText(
      'after',
      helpAfter(io, ['polewise homework papers "Week 40" --out papers.pdf --key key.pdf'], help.note),
    )
    .action(async (name: string, options: PapersOptions) => {
      const { makePapers } = await import('./papers.ts');
      running.code = await makePapers(name, options, io);
    });
}
