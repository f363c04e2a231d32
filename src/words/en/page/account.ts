export const account = {};

export type AccountWords = typeof account;
