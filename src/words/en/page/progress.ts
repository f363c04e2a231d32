export const progress = {};

export type ProgressWords = typeof progress;
