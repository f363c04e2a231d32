import type { Command } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../program.ts';
import type { PapersOptions } from './papers.ts';
import { withStoreOptions } from './store-options.ts';

export function addPapers(homework: Command, io: Io, running: Running): void {
  withStoreOptions(
    homework
      .command('papers')
      .summary('make papers, and print them')
      .description(
        'Makes the papers that are missing, and writes all of them as one PDF to print, and the answer key as another.',
      )
      .argument('<set>', 'the set, by its title, words of it, or id')
      .option('--out <file>', 'where the papers go, such as papers.pdf')
      .option('--key <file>', 'where the answers go, such as key.pdf'),
  )
    .addHelpText(
      'after',
      helpAfter(
        io,
        ['polewise homework papers "Week 40" --out papers.pdf --key key.pdf'],
        'Each paper has a name and a code; marks are typed in by the code with polewise homework mark.',
      ),
    )
    .action(async (name: string, options: PapersOptions) => {
      const { makePapers } = await import('./papers.ts');
      running.code = await makePapers(name, options, io);
    });
}
