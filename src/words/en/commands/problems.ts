/** Mistakes in what was given. */
import { mistakes } from './counted.ts';

export const problems = {
  nothingDone: (count: number) => `Nothing was done: ${mistakes(count)}.`,
};
