import { withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const timersInstant: Misconception = {
  id: 'timers-instant',
  changePlan: (plan) =>
    withMechanisms(plan, (mechanism) =>
      mechanism.delays.length > 0 ? { ...mechanism, drive: 'coil' } : mechanism,
    ),
};
