import { byCoil, withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const nothingMoves: Misconception = {
  id: 'nothing-moves',
  changePlan: (plan) =>
    withMechanisms(plan, (mechanism) =>
      byCoil(mechanism) && mechanism.frozenAt === undefined ? { ...mechanism, frozenAt: 0 } : mechanism,
    ),
};
