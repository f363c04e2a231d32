export const bench = {};

export type BenchWords = typeof bench;
