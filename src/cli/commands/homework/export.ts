import { buffer } from 'node:stream/consumers';
import { type Command, Option } from 'commander';
import type { QtiVersion } from '../../../homework/index.ts';
import type { Desk } from '../../../server/homework/desk.ts';
import { marksFile, packageOf, statementsFile } from '../../../server/homework/exports.ts';
import { helpAfter } from '../../help.ts';
import { type Io, UsageError } from '../../io.ts';
import { findSet } from './find.ts';
import { AT_THE_TERMINAL, type StoreOptions, withDesk, withStoreOptions } from './with-desk.ts';
import { writeNamed } from './write-file.ts';

interface Options extends StoreOptions {
  readonly qti: QtiVersion;
  readonly base?: string;
}

/** The address that names activities and accounts in statements, without a slash at its end. */
function baseIn({ base }: Options): string {
  if (base === undefined || !/^https?:\/\/[^/\s]+/.test(base))
    throw new UsageError(
      'Statements name things by an address, and none was given.',
      'Say where this installation is found, such as --base https://drawings.example.',
    );
  return base.replace(/\/+$/, '');
}

async function contentFor(desk: Desk, set: string, file: string, options: Options): Promise<Uint8Array> {
  const kind = /\.(csv|json|zip)$/i.exec(file)?.[1]?.toLowerCase();
  switch (kind) {
    case 'csv':
      return buffer(await marksFile(desk, AT_THE_TERMINAL, set));
    case 'json':
      return buffer(await statementsFile(desk, AT_THE_TERMINAL, set, baseIn(options)));
    case 'zip':
      return packageOf(desk, AT_THE_TERMINAL, set, options.qti);
    default:
      throw new UsageError(
        `${file}: neither .csv nor .json nor .zip.`,
        'Name the file for what it is to be: marks.csv, statements.json, package.zip.',
      );
  }
}

export function addExport(homework: Command, io: Io): void {
  withStoreOptions(
    homework
      .command('export')
      .summary('marks, statements or a package as a file')
      .description(
        'Writes the marks as a table (.csv), as xAPI statements (.json), or the sample paper as a QTI package (.zip).',
      )
      .argument('<set>', 'the set, by its title, words of it, or id')
      .argument('<file>', 'its name says what it is: marks.csv, statements.json, package.zip')
      .addOption(new Option('--qti <version>', 'of a package').choices(['3.0', '2.2']).default('3.0'))
      .option('--base <address>', 'where this installation is found, for statements'),
  )
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise homework export "Week 40" marks.csv',
          'polewise homework export "Week 40" statements.json --base https://drawings.example',
          'polewise homework export "Week 40" package.zip --qti 2.2',
        ],
        'docs/interchange.md says what is in them.',
      ),
    )
    .action((name: string, file: string, options: Options) =>
      withDesk(io, options, async (desk) => {
        const { set } = await findSet(desk.store, name);
        writeNamed(io, file, await contentFor(desk, set.id, file, options));
      }),
    );
}
