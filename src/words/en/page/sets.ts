export const sets = {};

export type SetsWords = typeof sets;
