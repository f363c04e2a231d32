import type { Misconception } from './types.ts';

export const commonReference: Misconception = {
  id: 'common-reference',
  idea: 'You measured between two isolated supplies as if they had a point in common.',
  advice:
    'A meter reads a difference between two points of one supply. Two isolated supplies have no common point, so between them it shows nothing.',
  source: 'common practice, no source',
  changePlan: (plan) =>
    plan.supplies.every(({ earthed }) => earthed) || plan.supplies.length < 2
      ? undefined
      : { ...plan, supplies: plan.supplies.map((supply) => ({ ...supply, earthed: true })) },
};
