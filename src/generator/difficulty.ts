/**
 * How hard a question is likely to be: a weighted sum of features, as in the linear logistic test model (G. Fischer, 1973).
 * The weights are our own judgement and no measurement; once answers have been collected they can be fitted, and what a
 * family adds beyond its features is to be a residual of its own. docs/generator.md says it in words.
 */
import type { Accepted } from './accept.ts';
import { type Features, featuresOf } from './features.ts';

export const WEIGHTS: Readonly<Record<keyof Features, number>> = {
  levels: 0.6,
  contacts: 0.3,
  parallel: 0.2,
  elsewhere: 0.1,
  memories: 0.5,
  timers: 0.5,
  acts: 0.25,
  faults: 0.8,
  asked: 0.15,
  tellsApart: 0.05,
};

/** Without unit; about 2 for one relay and two lamps, about 10 for eight relays that feed one another. */
export function difficultyOf(accepted: Accepted): number {
  const features = featuresOf(accepted);
  return (Object.keys(WEIGHTS) as (keyof Features)[]).reduce(
    (sum, feature) => sum + WEIGHTS[feature] * features[feature],
    0,
  );
}
