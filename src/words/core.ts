/** The words of the core, by language: a program fetches those that it speaks, the page in two parts. */
import type { AnsweringWords, AskingWords, Words } from './index.ts';

interface CoreLanguage {
  readonly asking: () => Promise<AskingWords>;
  readonly answering: () => Promise<AnsweringWords>;
  /** All of them. */
  readonly whole: () => Promise<Words>;
}

const CORE_LANGUAGES: Readonly<Record<string, CoreLanguage>> = {
  en: {
    asking: () => import('./en/asking.ts').then(({ asking }) => asking),
    answering: () => import('./en/answering.ts').then(({ answering }) => answering),
    whole: () => import('./en/core.ts').then(({ english }) => english),
  },
};

/** @throws RangeError where there are no words of that language */
function languageOf(tag: string): CoreLanguage {
  const language = CORE_LANGUAGES[tag];
  if (!language) throw new RangeError(`there are no words of the language ${tag}`);
  return language;
}

export const askingWords = async (tag: string): Promise<AskingWords> => languageOf(tag).asking();
export const answeringWords = async (tag: string): Promise<AnsweringWords> => languageOf(tag).answering();

/** What was loaded once: a job that speaks asks for each that it is given, and a loader takes longer than many of them. */
const loaded = new Map<string, Promise<Words>>();

export async function coreWords(tag: string): Promise<Words> {
  const known = loaded.get(tag) ?? languageOf(tag).whole();
  loaded.set(tag, known);
  return known;
}
