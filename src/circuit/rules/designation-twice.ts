import { namesTwice } from '../soundness/index.ts';
import type { DrawingRule } from './rule.ts';

export const designationTwice: DrawingRule = {
  name: 'designation-twice',
  check: (circuit) =>
    namesTwice(circuit).map(({ kind, name, concern }) => ({
      said: { says: kind === 'supply' ? 'designation-twice.supply' : 'designation-twice', name },
      concern,
    })),
};
