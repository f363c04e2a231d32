import { closeLater } from '../../../server/homework/sets.ts';
import type { Io } from '../../io.ts';
import { findSet } from './find.ts';
import { momentIn, momentText } from './moments.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, withDesk } from './with-desk.ts';

/** Gives a set a later closing time. */
export const letCloseLater = (name: string, time: string, options: StoreOptions, io: Io): Promise<void> =>
  withDesk(io, options, async (desk) => {
    const { set } = await findSet(desk.store, name);
    const later = await closeLater(desk, AT_THE_TERMINAL, set.id, momentIn('', time, set.closesAt));
    io.out(`It closes ${momentText(later.set.closesAt)}.`);
  });
