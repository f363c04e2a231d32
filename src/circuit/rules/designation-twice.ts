import { namesTwice } from '../soundness/index.ts';
import type { Rule } from './rule.ts';

export const designationTwice: Rule = {
  name: 'designation-twice',
  reason: 'A reference designation is how a thing is found in the panel: it names one thing.',
  source: 'IEC 81346-1 (from memory)',
  check: (circuit) => namesTwice(circuit).map(({ message, hint, concern }) => ({ message, hint, concern })),
};
