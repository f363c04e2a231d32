import type { Progress } from './types.ts';

/** What one database does in its own way. */
export interface Backend {
  readonly kind: 'sqlite' | 'postgres';
  /**
   * Begins to make sure that what was just erased is in none of the database's files, as far as it can. What takes long goes on by
   * itself.
   */
  afterErase(): Promise<void>;
  /** Ends what goes on by itself. */
  close?(): Promise<void>;
  /** What the database itself finds wrong with its files; empty when all is well or it can't say. */
  structureFaults(): Promise<readonly string[]>;
  backup(file: string, progress?: Progress, signal?: AbortSignal): Promise<void>;
}
