/** Solvers that are wrong in one way each. */
export { MISCONCEPTIONS } from './list.ts';
export {
  type Foretold,
  type Prediction,
  predict,
  predictAll,
  predictor,
  type View,
  viewOf,
} from './predict.ts';
export type { Misconception } from './types.ts';
