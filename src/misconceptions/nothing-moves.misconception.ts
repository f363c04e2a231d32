import { byCoil, withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const nothingMoves: Misconception = {
  id: 'nothing-moves',
  idea: 'You read the contacts as they are drawn, although their relays have operated.',
  advice:
    'The drawing shows everything at rest. Work out first which coils are energised, then move all their contacts, then follow the current.',
  source: 'shown by published training texts and forums',
  changePlan: (plan) =>
    withMechanisms(plan, (mechanism) =>
      byCoil(mechanism) && mechanism.frozenAt === undefined ? { ...mechanism, frozenAt: 0 } : mechanism,
    ),
};
