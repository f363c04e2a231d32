import { coreWords } from '../words/core.ts';
import type { Words } from '../words/index.ts';
import type { Io } from './io.ts';

/** What the core says, in the language of whoever reads the terminal. Fetched by commands that have something of it to say. */
export const coreWordsOf = ({ language }: Pick<Io, 'language'>): Promise<Words> => coreWords(language);
