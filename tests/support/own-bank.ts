import { readdirSync, readFileSync } from 'node:fs';
import type { Bank } from '../../shared/bank.ts';
import { readBank } from '../../src/banks/index.ts';

const folder = new URL('../../question-banks/', import.meta.url);

let read: Bank | undefined;

/** The banks that come with the program. */
export function ownBank(): Bank {
  if (read) return read;
  const files = readdirSync(folder)
    .filter((name) => name.endsWith('.md'))
    .map((file) => ({ file, text: readFileSync(new URL(file, folder), 'utf8') }));
  const bank = readBank(files);
  if (!bank.ok) throw new Error(JSON.stringify(bank.problems, null, 2));
  read = bank.value;
  return read;
}
