import { withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const delayAddsUp: Misconception = {
  id: 'delay-adds-up',
  source: 'common practice, no source',
  changePlan: (plan) =>
    withMechanisms(plan, (mechanism) =>
      mechanism.drive === 'on-delay' || mechanism.drive === 'off-delay'
        ? { ...mechanism, addsUp: true }
        : mechanism,
    ),
};
