/** Solvers that are wrong in one way each. */
export { MISCONCEPTIONS } from './list.ts';
export { type Prediction, predict, predictAll, type View, viewOf } from './predict.ts';
export type { Misconception } from './types.ts';
