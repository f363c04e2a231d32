import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { BankFile } from '../banks/index.ts';
import { type Course, courseOf } from '../practice/index.ts';
import { readGiven } from './files.ts';
import { foundAbove } from './found-above.ts';
import { type Io, UsageError } from './io.ts';
import { keptBank } from './kept-bank.ts';
import { problemText } from './problems.ts';

/** The folder of banks that came with the program. */
export function ownBanks(): string {
  const banks = foundAbove('question-banks');
  if (banks !== undefined) return banks;
  throw new UsageError(
    'The question banks that come with polewise are missing.',
    'Install it again, or name a folder with --banks.',
  );
}

/** Every Markdown file of a folder of banks, in order of name. */
export function bankFiles(folder: string): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith('.md'))
      .sort()
      .map((name) => join(folder, name));
  } catch {
    throw new UsageError(
      `There is no folder ${folder}.`,
      'Give the folder that holds the Markdown files of the banks.',
    );
  }
}

/** The text of banks. */
export const readBanks = (io: Io, names: readonly string[]): Promise<BankFile[]> =>
  Promise.all(
    names.map(async (file) => ({
      file,
      text: await readGiven(io, file, 'Name Markdown files, or a folder that holds them.'),
    })),
  );

/** Reads texts of banks as they are. */
export async function courseFrom(io: Io, files: readonly BankFile[], folder: string): Promise<Course> {
  const { readBank } = await import('../banks/index.ts');
  const bank = readBank(files);
  const course = bank.ok ? courseOf(bank.value) : bank;
  if (course.ok) return course.value;
  throw new UsageError(
    course.problems.map((problem) => problemText(problem, folder, io)).join('\n'),
    'polewise bank check tells all mistakes of the banks.',
  );
}

/** Reads the banks to practise from; a mistake in them is told with its place. */
export async function openCourse(io: Io, folder = ownBanks()): Promise<Course> {
  const files = await readBanks(io, bankFiles(folder));
  if (files.length === 0)
    throw new UsageError(
      `There is no bank in the folder ${folder}`,
      'Banks are Markdown files; docs/writing-a-bank.md says how to write one.',
    );
  const kept = keptBank(files);
  const course = kept && courseOf(kept);
  return course?.ok ? course.value : courseFrom(io, files, folder);
}
