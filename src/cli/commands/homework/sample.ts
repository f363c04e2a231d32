import type { Command } from 'commander';
import { sampleOf } from '../../../server/homework/sample.ts';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import { wholeNumber } from '../../numbers.ts';
import { questionText } from '../../question-text.ts';
import { styleFor, wrapText } from '../../style.ts';
import { findSet } from './find.ts';
import { AT_THE_TERMINAL, type StoreOptions, withDesk, withStoreOptions } from './with-desk.ts';

interface Options extends StoreOptions {
  readonly number: string;
}

export function addSample(homework: Command, io: Io): void {
  withStoreOptions(
    homework
      .command('sample')
      .summary('show a paper as a learner would get one')
      .description('Prints a paper of the set that nobody gets, with the right answers.')
      .argument('<set>', 'the set, by its title, words of it, or id')
      .option('--number <number>', 'another number gives another paper', '1'),
  )
    .addHelpText('after', helpAfter(io, ['polewise homework sample "Week 40" --number 2 | less']))
    .action((name: string, options: Options) =>
      withDesk(io, options, async (desk) => {
        const number = wholeNumber('--number', options.number, { low: 1, high: 1000, example: 2 });
        const { set } = await findSet(desk.store, name);
        const { items } = await sampleOf(desk, AT_THE_TERMINAL, set.id, number);
        const style = styleFor(io);
        for (const { place, item, question, mark } of items) {
          io.out(style.strong(`${place}. ${item.skill}, of ${item.marks}`));
          io.out('');
          io.out(questionText(question.circuit, question.asked, io));
          io.out('');
          for (const { item: asked, right } of mark.parts) io.out(`  ${asked}: ${right}`);
          for (const { text } of mark.explanation)
            io.out(style.quiet(wrapText(`  ${text}`, io.columns, '    ')));
          io.out('');
        }
      }),
    );
}
