import type { Command } from 'commander';
import { closeLater } from '../../../server/homework/sets.ts';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import { findSet } from './find.ts';
import { momentIn, momentText } from './moments.ts';
import { AT_THE_TERMINAL, type StoreOptions, withDesk, withStoreOptions } from './with-desk.ts';

export function addClosing(homework: Command, io: Io): void {
  withStoreOptions(
    homework
      .command('closing')
      .summary('let a set close later')
      .description('Gives a set that is issued and has not closed a later closing time, for everybody.')
      .argument('<set>', 'the set, by its title, words of it, or id')
      .argument('<time>', 'a time such as "2026-03-09 18:00", or +2d for two days after the time it has'),
  )
    .addHelpText('after', helpAfter(io, ['polewise homework closing "Week 40" +1d']))
    .action((name: string, time: string, options: StoreOptions) =>
      withDesk(io, options, async (desk) => {
        const { set } = await findSet(desk.store, name);
        const later = await closeLater(desk, AT_THE_TERMINAL, set.id, momentIn('', time, set.closesAt));
        io.out(`It closes ${momentText(later.set.closesAt)}.`);
      }),
    );
}
