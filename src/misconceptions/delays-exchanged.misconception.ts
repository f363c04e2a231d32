import { withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const delaysExchanged: Misconception = {
  id: 'delays-exchanged',
  changePlan: (plan) =>
    withMechanisms(plan, (mechanism) => {
      if (mechanism.drive === 'on-delay') return { ...mechanism, drive: 'off-delay' };
      const late = mechanism.drive === 'off-delay' || mechanism.drive === 'supplied-off-delay';
      return late ? { ...mechanism, drive: 'on-delay' } : mechanism;
    }),
};
