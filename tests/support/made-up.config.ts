/** The page as it is delivered, and in it one language more: the made-up one, in which its files are written too. */
import { join } from 'node:path';
import { mergeConfig, normalizePath, type Plugin } from 'vite';
import { document } from '../../src/words/en/page/document.ts';
import { ROOT } from '../../tools/sources.js';
import { configIn } from '../../vite.config.ts';
import { MADE_UP, madeUpLanguage } from './made-up-language.ts';

const LANGUAGE = normalizePath(join(ROOT, 'tests/support/made-up-language.ts'));

/** Numbers and lists stay as they are. */
const added = (languages: string): string => `
import { MADE_UP, madeUpLanguage } from '${LANGUAGE}';
${languages}[MADE_UP] = Object.fromEntries(
  Object.entries(${languages}['en']).map(([part, load]) => [
    part,
    () => load().then(({ speech, ...words }) => ({ ...madeUpLanguage(words), speech })),
  ]),
);
`;
const LANGUAGES = { pages: 'PAGE_LANGUAGES', core: 'CORE_LANGUAGES' } as const;

const withMadeUp = (): Plugin => ({
  name: 'polewise-made-up-language',
  enforce: 'pre',
  transform(code, id) {
    const [, name] = /\/src\/words\/(pages|core)\.ts$/.exec(normalizePath(id)) ?? [];
    return name ? { code: code + added(LANGUAGES[name as keyof typeof LANGUAGES]), map: null } : undefined;
  },
});

const page = configIn({ language: MADE_UP, words: madeUpLanguage(document) });

export default mergeConfig(page, { plugins: [withMadeUp()], worker: { plugins: () => [withMadeUp()] } });
