import { statSync } from 'node:fs';
import type { Bank } from '../../../shared/bank.ts';
import { readBank } from '../../banks/index.ts';
import { bankFiles, ownBanks, readBanks } from '../course.ts';
import { type Io, UsageError } from '../io.ts';
import { problemText } from '../problems.ts';

/** A folder stands for the Markdown files in it. */
function filesAt(path: string): readonly string[] {
  const isFolder = statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
  return isFolder ? bankFiles(path) : [path];
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;

function inWords({ topics }: Bank): string {
  const skills = topics.reduce((sum, { skills }) => sum + skills.length, 0);
  const questions = topics.reduce((sum, { questions }) => sum + questions.length, 0);
  return [counted(topics.length, 'topic'), counted(skills, 'skill'), counted(questions, 'question')].join(
    ', ',
  );
}

/**
 * Checks question banks as one bank: every mistake with file, line, column, reason and what would be right.
 *
 * @param paths - files and folders; none: the banks that come with the program
 * @returns the exit code: 0 no mistake, 2 mistakes
 */
export async function bankCheck(paths: readonly string[], io: Io): Promise<0 | 2> {
  if (paths.includes('-'))
    throw new UsageError(
      'A bank is a file that is named after its topic, so it can not come from standard input.',
      'Name files, or folders that hold them.',
    );
  const names = (paths.length > 0 ? paths : [ownBanks()]).flatMap(filesAt);
  if (names.length === 0)
    throw new UsageError(
      `There is no bank in the folder ${paths.join(', ')}`,
      'Banks are Markdown files; docs/writing-a-bank.md says how to write one.',
    );
  const bank = readBank(await readBanks(io, names), { tryRecipes: true });
  if (bank.ok) {
    io.out(`${inWords(bank.value)}: no mistakes.`);
    return 0;
  }
  for (const problem of bank.problems) io.err(problemText(problem, '', io));
  io.err(`${counted(bank.problems.length, 'mistake')} in ${counted(names.length, 'file')}.`);
  return 2;
}
