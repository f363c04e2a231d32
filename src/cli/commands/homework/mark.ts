import type { Command } from 'commander';
import type { TypedMarks } from '../../../../shared/homework-views.ts';
import type { Desk } from '../../../server/homework/desk.ts';
import { typeMarks } from '../../../server/homework/marked.ts';
import { ApiFailure } from '../../../server/problems.ts';
import { counted } from '../../counted.ts';
import { readGiven } from '../../files.ts';
import { helpAfter } from '../../help.ts';
import { type Io, UsageError } from '../../io.ts';
import { progressBar } from '../../progress-bar.ts';
import { findSet } from './find.ts';
import { AT_THE_TERMINAL, type StoreOptions, withDesk, withStoreOptions } from './with-desk.ts';

interface Options extends StoreOptions {
  readonly from?: string;
}

const MARK = /^\d{1,3}(?:\.\d{1,2})?$/;

/** Marks one after another, `-` for an item that was left out. */
function marksIn(words: readonly string[]): TypedMarks['marks'] {
  return words.map((word) => {
    if (word === '-') return null;
    if (MARK.test(word) && Number(word) <= 100) return Number(word);
    throw new UsageError(`${word}: no mark.`, 'Give a number such as 2 or 1.5, or - for an item left out.');
  });
}

/** `K7M2QP9DX 2 1.5 - 2`; the code may stand in groups, so it ends where its nine characters are together. */
function lineIn(line: string): TypedMarks {
  const words = line.trim().split(/[\s,;]+/);
  let code = '';
  let at = 0;
  while (at < words.length && code.length < 9) code += words[at++]!.replace(/-(?=.)/g, '');
  return { code, marks: marksIn(words.slice(at)) };
}

const typed = async (io: Io, desk: Desk, set: string, wanted: TypedMarks): Promise<void> => {
  const { name, total } = await typeMarks(desk, AT_THE_TERMINAL, set, wanted);
  io.out(`${name}: ${total.earned} of ${total.outOf}`);
};

/** Takes lines as they are typed, until an empty one; a wrong one is told and typed again. */
async function typeIn(io: Io, desk: Desk, set: string): Promise<void> {
  io.out('Type a code and its marks, - for an item left out. An empty line ends.');
  for (;;) {
    const line = (await io.question('code and marks: '))?.trim();
    if (!line) return;
    try {
      await typed(io, desk, set, lineIn(line));
    } catch (error) {
      if (!(error instanceof ApiFailure || error instanceof UsageError)) throw error;
      io.err(`${error.message}\n    ${error.hint}`);
    }
  }
}

/** Takes a file of lines. What is wrong is told with its line; the others are taken. */
async function takeFile(io: Io, desk: Desk, set: string, file: string): Promise<0 | 2> {
  const lines = (await readGiven(io, file)).split(/\r?\n/);
  const bar = progressBar(io, 'Papers marked');
  const wrong: string[] = [];
  let taken = 0;
  for (const [at, line] of lines.entries()) {
    bar.show(at + 1, lines.length);
    if (line.trim() === '' || line.startsWith('#')) continue;
    try {
      await typeMarks(desk, AT_THE_TERMINAL, set, lineIn(line));
      taken++;
    } catch (error) {
      if (!(error instanceof ApiFailure || error instanceof UsageError)) throw error;
      wrong.push(`${file}:${at + 1}: ${error.message}\n    ${error.hint}`);
    }
  }
  bar.end();
  for (const text of wrong) io.err(text);
  io.out(`The marks of ${counted(taken, 'paper')} are taken.`);
  return wrong.length > 0 ? 2 : 0;
}

export function addMarks(homework: Command, io: Io, running: { code: number }): void {
  withStoreOptions(
    homework
      .command('mark')
      .summary('type in the marks of papers that were written on paper')
      .description(
        'Takes marks by the code of the paper: one line in the command, a file of lines, or typed one after another.',
      )
      .argument('<set>', 'the set, by its title, words of it, or id')
      .argument('[code]', 'the code on the paper')
      .argument('[marks...]', 'a mark for each item in order; - for one that was left out')
      .option('--from <file>', 'lines of code and marks; - reads standard input'),
  )
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise homework mark "Week 40" K7M2QP9DX 2 1.5 - 2',
          'polewise homework mark "Week 40" --from marks.txt',
          'polewise homework mark "Week 40"',
        ],
        'Marks typed again stand beside the earlier ones, and the latest hold.',
      ),
    )
    .action((name: string, code: string | undefined, marks: string[], options: Options) =>
      withDesk(io, options, async (desk) => {
        const { set } = await findSet(desk.store, name);
        if (options.from !== undefined) running.code = await takeFile(io, desk, set.id, options.from);
        else if (code !== undefined) await typed(io, desk, set.id, lineIn([code, ...marks].join(' ')));
        else await typeIn(io, desk, set.id);
      }),
    );
}
