import { join } from 'node:path';
import { openPostgresStore } from './postgres.ts';
import { openSqliteStore, type StoreOptions } from './sqlite.ts';
import type { Store } from './types.ts';

/** Where the store is: a file in a data folder, or a PostgreSQL database. */
export type StorePlace =
  | { readonly kind: 'file'; readonly file: string }
  | { readonly kind: 'database'; readonly address: string };

/** The store's file in a data folder. */
export const storeFile = (folder: string): string => join(folder, 'practice.sqlite');

/** Opens (or begins) the store; throws a StoreFailure when that can't be done. */
export const openStore = (place: StorePlace, options: StoreOptions = {}): Promise<Store> =>
  place.kind === 'file' ? openSqliteStore(place.file, options) : openPostgresStore(place.address, options);
