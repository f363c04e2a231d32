import { withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const timersInstant: Misconception = {
  id: 'timers-instant',
  source: 'common practice, no source',
  changePlan: (plan) =>
    withMechanisms(plan, (mechanism) =>
      mechanism.drive === 'on-delay' || mechanism.drive === 'off-delay' || mechanism.drive === 'flasher'
        ? { ...mechanism, drive: 'coil' }
        : mechanism,
    ),
};
