import { COMMAND_LANGUAGES, type CommandWords } from '../words/commands.ts';

/** The words in the language that the terminal is set to; in English where there are none in it. */
export function ownWords(environment: NodeJS.ProcessEnv): Promise<CommandWords> {
  const { LC_ALL, LC_MESSAGES, LANG } = environment;
  const [language = ''] = (LC_ALL || LC_MESSAGES || LANG || '').split(/[_.@]/);
  return COMMAND_LANGUAGES[Object.hasOwn(COMMAND_LANGUAGES, language) ? language : 'en']!();
}
