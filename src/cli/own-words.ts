import { COMMAND_LANGUAGES } from '../words/commands.ts';
import type { Io } from './io.ts';

/** The language that the terminal is set to, and the words in it; English where there are none. */
export async function ownWords(environment: NodeJS.ProcessEnv): Promise<Pick<Io, 'language' | 'words'>> {
  const { LC_ALL, LC_MESSAGES, LANG } = environment;
  const [wanted = ''] = (LC_ALL || LC_MESSAGES || LANG || '').split(/[_.@]/);
  const language = Object.hasOwn(COMMAND_LANGUAGES, wanted) ? wanted : 'en';
  return { language, words: await COMMAND_LANGUAGES[language]!() };
}
