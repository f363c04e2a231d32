import { buffer } from 'node:stream/consumers';
import type { QtiVersion } from '../../../homework/index.ts';
import type { Desk } from '../../../server/homework/desk.ts';
import { marksFile, packageOf, statementsFile } from '../../../server/homework/exports.ts';
import { type Io, UsageError } from '../../io.ts';
import { findSet } from './find.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, withDesk } from './with-desk.ts';
import { writeNamed } from './write-file.ts';

export interface ExportOptions extends StoreOptions {
  readonly qti: QtiVersion;
  readonly base?: string;
}

/** The address that names activities and accounts in statements, without a slash at its end. */
function baseIn({ base }: ExportOptions): string {
  if (base === undefined || !/^https?:\/\/[^/\s]+/.test(base))
    throw new UsageError(
      'Statements name things by an address, and none was given.',
      'Say where this installation is found, such as --base https://drawings.example.',
    );
  return base.replace(/\/+$/, '');
}

async function contentFor(
  desk: Desk,
  set: string,
  file: string,
  options: ExportOptions,
): Promise<Uint8Array> {
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

/** Writes marks, statements or a package, by the name of the file. */
export const exportSet = (name: string, file: string, options: ExportOptions, io: Io): Promise<void> =>
  withDesk(io, options, async (desk) => {
    const { set } = await findSet(desk.store, name);
    writeNamed(io, file, await contentFor(desk, set.id, file, options));
  });
