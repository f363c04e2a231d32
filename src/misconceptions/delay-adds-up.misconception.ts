import { withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const delayAddsUp: Misconception = {
  id: 'delay-adds-up',
  // A flasher has two spans and no delay.
  changePlan: (plan) =>
    withMechanisms(plan, (mechanism) =>
      mechanism.delays.length === 1 ? { ...mechanism, addsUp: true } : mechanism,
    ),
};
