import type { Command } from 'commander';
import type { Desk } from '../../../server/homework/desk.ts';
import { issueSet } from '../../../server/homework/sets.ts';
import { counted } from '../../counted.ts';
import type { Io } from '../../io.ts';
import { findSet } from './find.ts';
import { momentText } from './moments.ts';
import { prepareAll } from './prepare-all.ts';
import { AT_THE_TERMINAL, type StoreOptions, withDesk, withStoreOptions } from './with-desk.ts';

/** Issues a set and makes everybody's paper. */
export async function issueAndPrepare(io: Io, desk: Desk, id: string, options: StoreOptions): Promise<void> {
  const { set } = await issueSet(desk, AT_THE_TERMINAL, id);
  const papers = await prepareAll(io, desk, id, options);
  io.out(`Issued, with ${counted(papers, 'paper')} made. It closes ${momentText(set.closesAt)}.`);
}

export function addIssue(homework: Command, io: Io): void {
  withStoreOptions(
    homework
      .command('issue')
      .summary('issue a set to its class')
      .description(
        'Issues a set and makes a paper for every learner. Whoever joins later gets one on beginning. Twice is once.',
      )
      .argument('<set>', 'the set, by its title or id'),
  )
    .addHelpText('after', '\nExample:\n  polewise homework issue "Week 40"')
    .action((name: string, options: StoreOptions) =>
      withDesk(io, options, async (desk) => {
        const { set } = await findSet(desk.store, name);
        await issueAndPrepare(io, desk, set.id, options);
      }),
    );
}
