import { withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const timersInstant: Misconception = {
  id: 'timers-instant',
  idea: 'You let a timer move its contacts at once, as a plain relay does.',
  advice:
    "Look at the timer's kind and time. An on-delay moves its contacts when its coil has been energised for that long; an off-delay lets them go that long after the coil was switched off.",
  source: 'common practice, no source',
  changePlan: (plan) =>
    withMechanisms(plan, (mechanism) =>
      mechanism.drive === 'on-delay' || mechanism.drive === 'off-delay' || mechanism.drive === 'flasher'
        ? { ...mechanism, drive: 'coil' }
        : mechanism,
    ),
};
