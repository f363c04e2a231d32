export const enter = {};

export type EnterWords = typeof enter;
