/** The words of the server, by language. */
import type { ServerWords } from './en/server/index.ts';

export type { ServerWords };

export const SERVER_LANGUAGES: Readonly<Record<string, () => Promise<ServerWords>>> = {
  en: () => import('./en/server/index.ts').then(({ server }) => server),
};
