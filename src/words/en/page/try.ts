export const tryIt = {};

export type TryWords = typeof tryIt;
