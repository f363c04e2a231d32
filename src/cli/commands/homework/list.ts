import type { Command } from 'commander';
import { setRows } from '../../../server/homework/sets.ts';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import { findClass } from './find.ts';
import { momentText } from './moments.ts';
import { AT_THE_TERMINAL, type StoreOptions, withDesk, withStoreOptions } from './with-desk.ts';

export function addList(homework: Command, io: Io): void {
  withStoreOptions(
    homework
      .command('list')
      .summary('list the sets of a class')
      .description('Lists the sets of a class, the newest first.')
      .argument('<class>', 'the class, by its title, words of it, or id'),
  )
    .addHelpText('after', helpAfter(io, ['polewise homework list "Autumn fitters"']))
    .action((name: string, options: StoreOptions) =>
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
      }),
    );
}
