/** The words of the commands, by language. A program speaks one from beginning to end, and loads no other. */
import type { CommandWords } from './en/commands/index.ts';

export type { CommandWords };

/** How each language's words are loaded. */
export const COMMAND_LANGUAGES: Readonly<Record<string, () => Promise<CommandWords>>> = {
  en: () => import('./en/commands/index.ts').then(({ commands }) => commands),
};
