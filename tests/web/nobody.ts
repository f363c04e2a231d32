import type { Arrivals } from '../../src/web/local/sync.ts';

/** A page that listens to nothing of what came from elsewhere. */
export const nobody: Arrivals = {
  ahead: () => undefined,
  lines: () => undefined,
  anew: () => undefined,
  coming: () => undefined,
  settings: () => undefined,
};
