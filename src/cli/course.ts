import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { BankFile } from '../banks/index.ts';
import { type Course, courseOf } from '../practice/index.ts';
import { tellProblem } from '../words/problems.ts';
import { coreWordsOf } from './core-words.ts';
import { readGiven } from './files.ts';
import { foundAbove } from './found-above.ts';
import { type Io, UsageError } from './io.ts';
import { keptBank } from './kept-bank.ts';
import { problemText } from './problems.ts';

/** The folder of banks that came with the program. */
export function ownBanks({ words }: Pick<Io, 'words'>): string {
  const banks = foundAbove('question-banks');
  if (banks !== undefined) return banks;
  const { wrong, right } = words.course.ownMissing;
  throw new UsageError(wrong, right);
}

/** Every Markdown file of a folder of banks, in order of name. */
export function bankFiles(folder: string, { words }: Pick<Io, 'words'>): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith('.md'))
      .sort()
      .map((name) => join(folder, name));
  } catch {
    const { wrong, right } = words.course.noFolder;
    throw new UsageError(wrong(folder), right);
  }
}

export function noBank({ words }: Io, folders: readonly string[]): UsageError {
  const { wrong, right } = words.course.noBank;
  return new UsageError(wrong(folders), right);
}

/** The text of banks. */
export const readBanks = (io: Io, names: readonly string[]): Promise<BankFile[]> =>
  Promise.all(
    names.map(async (file) => ({
      file,
      text: await readGiven(io, file, io.words.course.wanted),
    })),
  );

/** Reads texts of banks as they are. */
export async function courseFrom(io: Io, files: readonly BankFile[], folder: string): Promise<Course> {
  const { readBank } = await import('../banks/index.ts');
  const bank = readBank(files);
  const course = bank.ok ? courseOf(bank.value) : bank;
  if (course.ok) return course.value;
  const words = await coreWordsOf(io);
  throw new UsageError(
    course.problems.map((problem) => problemText(tellProblem(words, problem), folder, io)).join('\n'),
    io.words.course.allMistakes,
  );
}

/** Reads the banks to practise from; a mistake in them is told with its place. */
export async function openCourse(io: Io, folder = ownBanks(io)): Promise<Course> {
  const files = await readBanks(io, bankFiles(folder, io));
  if (files.length === 0) throw noBank(io, [folder]);
  const kept = keptBank(files);
  const course = kept && courseOf(kept);
  return course?.ok ? course.value : courseFrom(io, files, folder);
}
