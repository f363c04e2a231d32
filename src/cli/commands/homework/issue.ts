import type { Command } from 'commander';
import type { Desk } from '../../../server/homework/desk.ts';
import { issueSet } from '../../../server/homework/sets.ts';
import { counted } from '../../counted.ts';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { Running } from '../../program.ts';
import { INTERRUPTED } from '../../until-stopped.ts';
import { findSet } from './find.ts';
import { momentText } from './moments.ts';
import { partlyMade, prepareAll } from './prepare-all.ts';
import { AT_THE_TERMINAL, type StoreOptions, withDesk, withStoreOptions } from './with-desk.ts';

/** Issues a set and makes everybody's paper; gives the exit code. */
export async function issueAndPrepare(
  io: Io,
  desk: Desk,
  id: string,
  options: StoreOptions,
): Promise<number> {
  const { set } = await issueSet(desk, AT_THE_TERMINAL, id);
  const prepared = await prepareAll(io, desk, id, options);
  const closes = `It closes ${momentText(set.closesAt)}.`;
  if (prepared.made >= prepared.of) {
    io.out(`Issued, with ${counted(prepared.of, 'paper')} made. ${closes}`);
    return 0;
  }
  io.out(`The set is issued, and ${partlyMade(prepared)}. ${closes}`);
  io.out('The others are made when this is run again, or each when its learner begins.');
  return INTERRUPTED;
}

export function addIssue(homework: Command, io: Io, running: Running): void {
  withStoreOptions(
    homework
      .command('issue')
      .summary('issue a set to its class')
      .description(
        'Issues a set and makes a paper for every learner. Whoever joins later gets one on beginning. Twice is once, so it can be stopped and run again.',
      )
      .argument('<set>', 'the set, by its title, words of it, or id'),
  )
    .addHelpText('after', helpAfter(io, ['polewise homework issue "Week 40"']))
    .action((name: string, options: StoreOptions) =>
      withDesk(io, options, async (desk) => {
        const { set } = await findSet(desk.store, name);
        running.code = await issueAndPrepare(io, desk, set.id, options);
      }),
    );
}
