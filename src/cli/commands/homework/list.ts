import { setRows } from '../../../server/homework/sets.ts';
import type { Io } from '../../io.ts';
import { findClass } from './find.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, withDesk } from './with-desk.ts';

/** Lists the sets of a class, the newest first. */
export const listSets = (name: string, options: StoreOptions, io: Io): Promise<void> =>
  withDesk(io, options, async (desk) => {
    const { homework: said, moments } = io.words;
    const { id } = await findClass(desk.store, name, io.words);
    const sets = await setRows(desk, AT_THE_TERMINAL, id);
    for (const set of sets) {
      io.out(`${set.id}  ${set.title}`);
      const row = said.setRow({
        state: said.states[set.state],
        closes: moments.moment(set.closesAt),
        handedIn: set.handedIn,
        learners: set.learners,
      });
      io.out(`    ${row}`);
    }
    if (sets.length === 0) io.out(said.noSetsYet);
  });
