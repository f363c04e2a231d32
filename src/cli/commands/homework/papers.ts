import { buffer } from 'node:stream/consumers';
import type { Command } from 'commander';
import { keyFile, papersFile } from '../../../server/homework/prints.ts';
import { helpAfter } from '../../help.ts';
import { type Io, UsageError } from '../../io.ts';
import type { Running } from '../../program.ts';
import { progressBar } from '../../progress-bar.ts';
import { INTERRUPTED } from '../../until-stopped.ts';
import { findSet } from './find.ts';
import { ownZone } from './moments.ts';
import { partlyMade, prepareAll } from './prepare-all.ts';
import { AT_THE_TERMINAL, type StoreOptions, withDesk, withStoreOptions } from './with-desk.ts';
import { writeNamed } from './write-file.ts';

interface Options extends StoreOptions {
  readonly out?: string;
  readonly key?: string;
}

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
    .action((name: string, options: Options) =>
      withDesk(io, options, async (desk) => {
        const { out, key } = options;
        for (const file of [out, key])
          if (file !== undefined && !/\.pdf$/i.test(file))
            throw new UsageError(`${file} is no name of a PDF.`, 'Name it such as papers.pdf.');
        const { set } = await findSet(desk.store, name);
        const prepared = await prepareAll(io, desk, set.id, options);
        if (prepared.made < prepared.of) {
          io.out(`Stopped; ${partlyMade(prepared)}. Run it again for the others.`);
          running.code = INTERRUPTED;
          return;
        }
        if (out === undefined && key === undefined) io.out(`All ${prepared.of} papers are made.`);
        const drawn = progressBar(io, 'Papers drawn');
        const answered = progressBar(io, 'Answers written');
        try {
          if (out !== undefined) {
            const pdf = await buffer(await papersFile(desk, AT_THE_TERMINAL, set.id, ownZone(), drawn.show));
            drawn.end();
            writeNamed(io, out, pdf);
          }
          if (key !== undefined) {
            const pdf = await buffer(await keyFile(desk, AT_THE_TERMINAL, set.id, answered.show));
            answered.end();
            writeNamed(io, key, pdf);
          }
        } finally {
          drawn.end();
          answered.end();
        }
      }),
    );
}
