import type { TypedMarks } from '../../../../shared/homework-views.ts';
import type { Desk } from '../../../server/homework/desk.ts';
import { typeMarks } from '../../../server/homework/marked.ts';
import type { CommandWords } from '../../../words/commands.ts';
import { readGiven } from '../../files.ts';
import { type Io, UsageError } from '../../io.ts';
import { progressBar } from '../../progress-bar.ts';
import { findSet } from './find.ts';
import type { StoreOptions } from './store-options.ts';
import { AT_THE_TERMINAL, usageErrorOf, withDesk } from './with-desk.ts';

export interface MarksOptions extends StoreOptions {
  readonly from?: string;
}

type Said = CommandWords['homeworkPapers'];

const MARK = /^\d{1,3}(?:\.\d{1,2})?$/;

/** Marks one after another, `-` for an item that was left out. */
function marksIn(words: readonly string[], { noMark }: Said): TypedMarks['marks'] {
  return words.map((word) => {
    if (word === '-') return null;
    if (MARK.test(word) && Number(word) <= 100) return Number(word);
    throw new UsageError(noMark.wrong(word), noMark.right);
  });
}

/** `K7M2QP9DX 2 1.5 - 2`; the code may stand in groups, so it ends where its nine characters are together. */
function lineIn(line: string, said: Said): TypedMarks {
  const words = line.trim().split(/[\s,;]+/);
  let code = '';
  let at = 0;
  while (at < words.length && code.length < 9) code += words[at++]!.replace(/-(?=.)/g, '');
  return { code, marks: marksIn(words.slice(at), said) };
}

const typed = async (io: Io, desk: Desk, set: string, wanted: TypedMarks): Promise<void> => {
  const { name, total } = await typeMarks(desk, AT_THE_TERMINAL, set, wanted);
  io.out(io.words.homeworkPapers.earned({ name, ...total }));
};

/** What was refused of a line; throws what isn't a refusal. */
function told(thrown: unknown, { words }: Desk): string {
  const error = usageErrorOf(thrown, words);
  if (!(error instanceof UsageError)) throw thrown;
  return `${error.message}\n    ${error.hint}`;
}

/** Takes lines as they are typed, until an empty one; a wrong one is told and typed again. */
async function typeIn(io: Io, desk: Desk, set: string): Promise<void> {
  const { homeworkPapers: said } = io.words;
  io.out(said.howToType);
  for (;;) {
    const line = (await io.question(said.prompt))?.trim();
    if (!line) return;
    try {
      await typed(io, desk, set, lineIn(line, said));
    } catch (error) {
      io.err(told(error, desk));
    }
  }
}

/** Takes a file of lines. What is wrong is told with its line; the others are taken. */
async function takeFile(io: Io, desk: Desk, set: string, file: string): Promise<0 | 2> {
  const { homeworkPapers: said, progress } = io.words;
  const lines = (await readGiven(io, file)).split(/\r?\n/);
  const bar = progressBar(io, progress.papersMarked);
  const wrong: string[] = [];
  let taken = 0;
  for (const [at, line] of lines.entries()) {
    bar.show(at + 1, lines.length);
    if (line.trim() === '' || line.startsWith('#')) continue;
    try {
      await typeMarks(desk, AT_THE_TERMINAL, set, lineIn(line, said));
      taken++;
    } catch (error) {
      wrong.push(`${file}:${at + 1}: ${told(error, desk)}`);
    }
  }
  bar.end();
  for (const text of wrong) io.err(text);
  io.out(said.taken(taken));
  return wrong.length > 0 ? 2 : 0;
}

/** Takes the marks of papers: of one line, of a file, or as they are typed; gives the exit code. */
export const takeMarks = (
  name: string,
  line: readonly string[],
  { from, ...options }: MarksOptions,
  io: Io,
): Promise<0 | 2> =>
  withDesk(io, options, async (desk) => {
    const { set } = await findSet(desk.store, name, io.words);
    if (from !== undefined) return takeFile(io, desk, set.id, from);
    if (line.length > 0) await typed(io, desk, set.id, lineIn(line.join(' '), io.words.homeworkPapers));
    else await typeIn(io, desk, set.id);
    return 0;
  });
