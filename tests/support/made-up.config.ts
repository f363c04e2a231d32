/** The page as it is delivered, and in it one language more: the made-up one. */
import { join } from 'node:path';
import { mergeConfig, normalizePath, type Plugin } from 'vite';
import { ROOT } from '../../tools/sources.js';
import page from '../../vite.config.ts';

const LANGUAGE = normalizePath(join(ROOT, 'tests/support/made-up-language.ts'));

const ADDED = `
import { MADE_UP, madeUpLanguage } from '${LANGUAGE}';
PAGE_LANGUAGES[MADE_UP] = Object.fromEntries(
  Object.entries(PAGE_LANGUAGES['en']).map(([part, load]) => [part, () => load().then(madeUpLanguage)]),
);
`;

const withMadeUp: Plugin = {
  name: 'polewise-made-up-language',
  enforce: 'pre',
  transform: (code, id) =>
    normalizePath(id).endsWith('/src/words/pages.ts') ? { code: code + ADDED, map: null } : undefined,
};

export default mergeConfig(page, { plugins: [withMadeUp] });
