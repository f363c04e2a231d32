import { buffer } from 'node:stream/consumers';
import { homeworkRoutes } from '../../../../shared/api-homework.ts';
import type { QtiVersion } from '../../../homework/index.ts';
import type { Desk } from '../../../server/homework/desk.ts';
import { EXPORT_NAMES, EXPORTS, type ExportName } from '../../../server/homework/exports.ts';
import type { CommandWords } from '../../../words/commands.ts';
import { type Io, UsageError } from '../../io.ts';
import { writeNamed } from '../../write-file.ts';
import { findSet } from './find.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, withDesk } from './with-desk.ts';

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

/** The export whose file ends as the wanted one does; of packages the one of the version. */
function exportFor(file: string, { qti }: ExportOptions): ExportName | undefined {
  const kind = /\.[a-z]+$/i.exec(file)?.[0].toLowerCase();
  const fitting = EXPORT_NAMES.filter(
    (name) => kind !== undefined && homeworkRoutes[name].path.endsWith(kind),
  );
  return fitting.find((name) => homeworkRoutes[name].path.includes(`-${qti}.`)) ?? fitting[0];
}

async function contentFor(
  desk: Desk,
  set: string,
  file: string,
  options: ExportOptions,
  { homeworkReport: said }: CommandWords,
): Promise<Uint8Array> {
  const name = exportFor(file, options);
  if (!name) throw new UsageError(said.noSuchExport.wrong(file), said.noSuchExport.right);
  const make: (typeof EXPORTS)[ExportName] = EXPORTS[name];
  const content = await make(desk, AT_THE_TERMINAL, set, () => baseIn(options, said));
  return content instanceof Uint8Array ? content : buffer(content);
}

/** Writes marks, statements or a package, by the name of the file. */
export const exportSet = (name: string, file: string, options: ExportOptions, io: Io): Promise<void> =>
  withDesk(io, options, async (desk) => {
    const { set } = await findSet(desk.store, name, io.words);
    writeNamed(io, file, await contentFor(desk, set.id, file, options, io.words));
  });
