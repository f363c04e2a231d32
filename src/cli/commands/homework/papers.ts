import { buffer } from 'node:stream/consumers';
import { keyFile, papersFile } from '../../../server/homework/prints.ts';
import { type Io, UsageError } from '../../io.ts';
import { progressBar } from '../../progress-bar.ts';
import { INTERRUPTED } from '../../until-stopped.ts';
import { writeNamed } from '../../write-file.ts';
import { findSet } from './find.ts';
import { ownZone } from './moments.ts';
import { prepareAll } from './prepare-all.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, withDesk } from './with-desk.ts';

export interface PapersOptions extends StoreOptions {
  readonly out?: string;
  readonly key?: string;
}

/** Makes the papers that are missing, and prints them where files are named; gives the exit code. */
export const makePapers = (name: string, options: PapersOptions, io: Io): Promise<number> =>
  withDesk(io, options, async (desk) => {
    const { files, homeworkPapers: said, progress } = io.words;
    const { out, key } = options;
    for (const file of [out, key])
      if (file !== undefined && !/\.pdf$/i.test(file))
        throw new UsageError(files.noPdf.wrong(file), files.noPdf.right('papers.pdf'));
    const { set } = await findSet(desk.store, name, io.words);
    const prepared = await prepareAll(io, desk, set.id, options);
    if (prepared.made < prepared.of) {
      io.out(said.stopped(prepared));
      return INTERRUPTED;
    }
    if (out === undefined && key === undefined) io.out(said.allMade(prepared.of));
    const drawn = progressBar(io, progress.papersDrawn);
    const answered = progressBar(io, progress.answersWritten);
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
    return 0;
  });
