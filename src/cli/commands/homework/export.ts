import { buffer } from 'node:stream/consumers';
import type { QtiVersion } from '../../../homework/index.ts';
import type { Desk } from '../../../server/homework/desk.ts';
import { marksFile, packageOf, statementsFile } from '../../../server/homework/exports.ts';
import type { CommandWords } from '../../../words/commands.ts';
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
function baseIn({ base }: ExportOptions, { noBase }: CommandWords['homeworkReport']): string {
  if (base === undefined || !/^https?:\/\/[^/\s]+/.test(base))
    throw new UsageError(noBase.wrong, noBase.right);
  return base.replace(/\/+$/, '');
}

async function contentFor(
  desk: Desk,
  set: string,
  file: string,
  options: ExportOptions,
  { homeworkReport: said }: CommandWords,
): Promise<Uint8Array> {
  const kind = /\.(csv|json|zip)$/i.exec(file)?.[1]?.toLowerCase();
  switch (kind) {
    case 'csv':
      return buffer(await marksFile(desk, AT_THE_TERMINAL, set));
    case 'json':
      return buffer(await statementsFile(desk, AT_THE_TERMINAL, set, baseIn(options, said)));
    case 'zip':
      return packageOf(desk, AT_THE_TERMINAL, set, options.qti);
    default:
      throw new UsageError(said.noSuchExport.wrong(file), said.noSuchExport.right);
  }
}

/** Writes marks, statements or a package, by the name of the file. */
export const exportSet = (name: string, file: string, options: ExportOptions, io: Io): Promise<void> =>
  withDesk(io, options, async (desk) => {
    const { set } = await findSet(desk.store, name, io.words);
    writeNamed(io, file, await contentFor(desk, set.id, file, options, io.words));
  });
