import { isDeepStrictEqual } from 'node:util';
import type { Mark } from '../../shared/question.ts';

/** As it would come back from the store. */
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

/** Whether two marks say the same of the answer. How it is explained may have been put better since. */
export const sameMark = (one: Mark, other: Mark): boolean =>
  one.share === other.share &&
  one.correct === other.correct &&
  isDeepStrictEqual(plain(one.parts), plain(other.parts));
