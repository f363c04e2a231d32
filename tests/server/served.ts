/** The server as it is delivered, for a test; built once for a run of tests. */
import { builtPolewise } from '../support/built.ts';
import { type Served, started } from './started.ts';

export type { Served };

/** Runs `serve` (or what serves too) with these options and waits until it is ready; throws what it printed when it ends before. */
export const served = async (
  options: readonly string[],
  environment: Readonly<Record<string, string>> = {},
  command = 'serve',
): Promise<Served> => started(await builtPolewise(), options, environment, command);
