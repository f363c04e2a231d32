import { setRows } from '../../../server/homework/sets.ts';
import type { Io } from '../../io.ts';
import { findClass } from './find.ts';
import { momentText } from './moments.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, withDesk } from './with-desk.ts';

/** Lists the sets of a class, the newest first. */
export const listSets = (name: string, options: StoreOptions, io: Io): Promise<void> =>
  withDesk(io, options, async (desk) => {
    const { id } = await findClass(desk.store, name);
    const sets = await setRows(desk, AT_THE_TERMINAL, id);
    for (const set of sets) {
      io.out(`${set.id}  ${set.title}`);
      io.out(
        `    ${set.state}, until ${momentText(set.closesAt)}; ${set.handedIn} of ${set.learners} handed in`,
      );
    }
    if (sets.length === 0) io.out('There are no sets yet; polewise homework new makes one.');
  });
