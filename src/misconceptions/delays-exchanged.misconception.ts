import { withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const delaysExchanged: Misconception = {
  id: 'delays-exchanged',
  idea: 'You took an on-delay for an off-delay, or an off-delay for an on-delay.',
  advice:
    'An on-delay waits before it operates and releases at once. An off-delay operates at once and waits before it releases.',
  source: 'common practice, no source',
  changePlan: (plan) =>
    withMechanisms(plan, (mechanism) => {
      if (mechanism.drive === 'on-delay') return { ...mechanism, drive: 'off-delay' };
      return mechanism.drive === 'off-delay' ? { ...mechanism, drive: 'on-delay' } : mechanism;
    }),
};
