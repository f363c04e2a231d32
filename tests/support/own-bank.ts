import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Bank } from '../../shared/bank.ts';
import { readBank } from '../../src/banks/index.ts';
import { bankFiles, ownBanks } from '../../src/cli/course.ts';
import { commands } from '../../src/words/en/commands/index.ts';

let read: Bank | undefined;

/** The banks that come with the program. */
export function ownBank(): Bank {
  if (read) return read;
  const said = { words: commands };
  const files = bankFiles(ownBanks(said), said).map((path) => ({
    file: basename(path),
    text: readFileSync(path, 'utf8'),
  }));
  const bank = readBank(files);
  if (!bank.ok) throw new Error(JSON.stringify(bank.problems, null, 2));
  read = bank.value;
  return read;
}
