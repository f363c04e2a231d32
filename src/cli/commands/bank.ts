import { statSync } from 'node:fs';
import type { Bank } from '../../../shared/bank.ts';
import { readBank } from '../../banks/index.ts';
import { tellProblem } from '../../words/problems.ts';
import { coreWordsOf } from '../core-words.ts';
import { bankFiles, noBank, ownBanks, readBanks } from '../course.ts';
import { type Io, UsageError } from '../io.ts';
import { problemText } from '../problems.ts';

/** A folder stands for the Markdown files in it. */
function filesAt(path: string, io: Io): readonly string[] {
  const isFolder = statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
  return isFolder ? bankFiles(path, io) : [path];
}

const countsOf = ({ topics }: Bank) => ({
  topics: topics.length,
  skills: topics.reduce((sum, { skills }) => sum + skills.length, 0),
  questions: topics.reduce((sum, { questions }) => sum + questions.length, 0),
});

/**
 * Checks question banks as one bank: every mistake with file, line, column, reason and what would be right.
 *
 * @param paths - files and folders; none: the banks that come with the program
 * @returns the exit code: 0 no mistake, 2 mistakes
 */
export async function bankCheck(paths: readonly string[], io: Io): Promise<0 | 2> {
  const { bank: said } = io.words;
  if (paths.includes('-')) throw new UsageError(said.noStandardInput.wrong, said.noStandardInput.right);
  const names = (paths.length > 0 ? paths : [ownBanks(io)]).flatMap((path) => filesAt(path, io));
  if (names.length === 0) throw noBank(io, paths);
  const bank = readBank(await readBanks(io, names), { tryRecipes: true });
  if (bank.ok) {
    io.out(said.noMistakes(countsOf(bank.value)));
    return 0;
  }
  const words = await coreWordsOf(io);
  for (const problem of bank.problems) io.err(problemText(tellProblem(words, problem), '', io));
  io.err(said.mistakes({ mistakes: bank.problems.length, files: names.length }));
  return 2;
}
