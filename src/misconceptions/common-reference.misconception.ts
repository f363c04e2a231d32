import type { Misconception } from './types.ts';

export const commonReference: Misconception = {
  id: 'common-reference',
  changePlan: (plan) =>
    plan.supplies.every(({ earthed }) => earthed) || plan.supplies.length < 2
      ? undefined
      : { ...plan, supplies: plan.supplies.map((supply) => ({ ...supply, earthed: true })) },
};
