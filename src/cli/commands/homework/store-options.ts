import type { Command } from 'commander';

export interface StoreOptions {
  readonly data?: string;
  readonly banks?: string;
}

/** The options that say where everything is. */
export const withStoreOptions = (command: Command): Command =>
  command
    .option('--data <folder>', 'the data folder (default: the one that serve uses)')
    .option('--banks <folder>', 'question banks instead of those that come with the program');
