import { closeLater } from '../../../server/homework/sets.ts';
import type { Io } from '../../io.ts';
import { findSet } from './find.ts';
import { momentIn } from './moments.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, withDesk } from './with-desk.ts';

/** Gives a set a later closing time. */
export const letCloseLater = (name: string, time: string, options: StoreOptions, io: Io): Promise<void> =>
  withDesk(io, options, async (desk) => {
    const { homework, moments } = io.words;
    const { set } = await findSet(desk.store, name, io.words);
    const later = await closeLater(desk, AT_THE_TERMINAL, set.id, momentIn(io.words, '', time, set.closesAt));
    io.out(homework.closes(moments.moment(later.set.closesAt)));
  });
