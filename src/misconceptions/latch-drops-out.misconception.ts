import { withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const latchDropsOut: Misconception = {
  id: 'latch-drops-out',
  idea: 'You let a latching relay drop out as soon as its coil lost its voltage.',
  advice:
    'A latching relay stays where its last pulse put it, even without supply. Only its reset coil (B1-B2) brings it back.',
  source: 'common practice, no source',
  changePlan: (plan) =>
    withMechanisms(plan, (mechanism) =>
      mechanism.drive === 'latch' ? { ...mechanism, drive: 'coil' } : mechanism,
    ),
};
