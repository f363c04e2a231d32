import type { Command } from 'commander';
import type { CommandWords } from '../../../words/commands.ts';

export interface StoreOptions {
  readonly data?: string;
  readonly banks?: string;
}

/** The options that say where everything is. */
export const withStoreOptions = (command: Command, { given, values }: CommandWords): Command =>
  command
    .option(`--data <${values.folder}>`, given.options.dataOfServe)
    .option(`--banks <${values.folder}>`, given.options.banks);
