import type { Desk } from '../../../server/homework/desk.ts';
import { issueSet } from '../../../server/homework/sets.ts';
import type { Io } from '../../io.ts';
import { INTERRUPTED } from '../../until-stopped.ts';
import { findSet } from './find.ts';
import { prepareAll } from './prepare-all.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, withDesk } from './with-desk.ts';

/** Issues a set and makes everybody's paper; gives the exit code. */
export async function issueAndPrepare(
  io: Io,
  desk: Desk,
  id: string,
  options: StoreOptions,
): Promise<number> {
  const { set } = await issueSet(desk, AT_THE_TERMINAL, id);
  const prepared = await prepareAll(io, desk, id, options);
  const { homework: said, moments } = io.words;
  const closes = moments.moment(set.closesAt);
  if (prepared.made >= prepared.of) {
    io.out(said.issued({ count: prepared.of, closes }));
    return 0;
  }
  io.out(said.issuedPartly({ ...prepared, closes }));
  io.out(said.othersLater);
  return INTERRUPTED;
}

/** Issues a set that is named; gives the exit code. */
export const issue = (name: string, options: StoreOptions, io: Io): Promise<number> =>
  withDesk(io, options, async (desk) => {
    const { set } = await findSet(desk.store, name, io.words);
    return issueAndPrepare(io, desk, set.id, options);
  });
