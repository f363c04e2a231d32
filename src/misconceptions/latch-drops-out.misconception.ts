import { withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const latchDropsOut: Misconception = {
  id: 'latch-drops-out',
  changePlan: (plan) =>
    withMechanisms(plan, (mechanism) =>
      mechanism.drive === 'latch' ? { ...mechanism, drive: 'coil' } : mechanism,
    ),
};
