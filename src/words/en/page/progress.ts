export const progress = {
  /** Why the server has not erased what it keeps. */
  nothingErased: {
    silent: 'Nothing was erased: the server cannot be reached. Erase again as soon as there is a network.',
    refused: ({ message, hint }: { message: string; hint: string }) =>
      `Nothing was erased: ${message} ${hint}`,
    another: 'Nothing was erased: what answered was not the server. Erase again on another network.',
  },
};

export type ProgressWords = typeof progress;
