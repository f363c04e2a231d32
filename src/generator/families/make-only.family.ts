import type { Family } from '../types.ts';
import { oneLegDraft } from './one-leg.ts';

/** Dark at rest, lit while the relay is energised. */
export const makeOnly: Family = {
  id: 'make-only',
  size: { min: 1, max: 7 },
  draft: (random, { size }) => oneLegDraft(random, size, makeOnly.id, 'made'),
};
