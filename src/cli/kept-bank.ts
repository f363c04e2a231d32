/**
 * The banks that come with the program, read once for all when it was built: to read and check them takes longer than
 * everything else that a server begins with. What was kept holds for just the texts that it was made of.
 */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Bank } from '../../shared/bank.ts';
import type { BankFile } from '../banks/index.ts';
import { foundAbove } from './found-above.ts';

const FILE = 'bank-as-read.json';

interface Kept {
  readonly of: string;
  readonly bank: Bank;
}

function digestOf(files: readonly BankFile[]): string {
  const hash = createHash('sha256');
  for (const { file, text } of files) hash.update(`${basename(file)}\0${text.length}\0${text}\0`);
  return hash.digest('hex');
}

/** What these texts were read as; undefined where they are others, or nothing was kept. */
export function keptBank(files: readonly BankFile[]): Bank | undefined {
  const path = foundAbove(FILE);
  if (path === undefined) return undefined;
  const kept = JSON.parse(readFileSync(path, 'utf8')) as Kept;
  return kept.of === digestOf(files) ? kept.bank : undefined;
}

/** Keeps what texts were read as in the folder of a program that was built. */
export function keepBank(files: readonly BankFile[], bank: Bank, folder: string): void {
  const kept: Kept = { of: digestOf(files), bank };
  writeFileSync(join(folder, FILE), JSON.stringify(kept));
}
