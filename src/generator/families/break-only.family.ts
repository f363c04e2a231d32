import type { Family } from '../types.ts';
import { oneLegDraft } from './one-leg.ts';

/** Lit at rest, dark energised, lit again on release. */
export const breakOnly: Family = {
  id: 'break-only',
  size: { min: 1, max: 7 },
  draft: (random, { size }) => oneLegDraft(random, size, breakOnly.id, 'rest'),
};
