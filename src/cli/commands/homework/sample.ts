import { sampleOf } from '../../../server/homework/sample.ts';
import type { Io } from '../../io.ts';
import { wholeNumber } from '../../numbers.ts';
import { questionText } from '../../question-text.ts';
import { styleFor, wrapText } from '../../style.ts';
import { findSet } from './find.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, withDesk } from './with-desk.ts';

export interface SampleOptions extends StoreOptions {
  readonly number: string;
}

/** Prints a paper that nobody gets, with the right answers. */
export const printSample = (name: string, options: SampleOptions, io: Io): Promise<void> =>
  withDesk(io, options, async (desk) => {
    const { homework: said } = io.words;
    const number = wholeNumber(io, '--number', options.number, { low: 1, high: 1000, example: 2 });
    const { set } = await findSet(desk.store, name, io.words);
    const { items } = await sampleOf(desk, AT_THE_TERMINAL, set.id, number);
    const style = styleFor(io);
    for (const { place, item, question, mark } of items) {
      io.out(style.strong(said.sampleItem({ place, skill: item.skill, marks: item.marks })));
      io.out('');
      io.out(questionText(desk.words, question.circuit, question.asked, io));
      io.out('');
      for (const { item: asked, right } of mark.parts) io.out(`  ${said.rightAnswer({ asked, right })}`);
      for (const { text, behind } of mark.explanation.decides)
        for (const told of [text, ...behind.map((step) => step.text)])
          io.out(style.quiet(wrapText(`  ${told}`, io.columns, '    ')));
      io.out('');
    }
  });
