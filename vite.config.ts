import { readdirSync, readFileSync } from 'node:fs';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { minify } from 'terser';
import { defineConfig, type Plugin, type UserConfig } from 'vite';
import { type DocumentWords, document } from './src/words/en/page/document.ts';

/**
 * Writes the names of all built files into the service worker, so that one visit is enough to practise without network.
 * The list's digest is in it too: a new build is a new worker, which fetches what changed.
 */
function precache(): Plugin {
  return {
    name: 'polewise-precache',
    apply: 'build',
    enforce: 'post',
    generateBundle(_options, bundle) {
      const worker = bundle['service-worker.js'];
      if (worker?.type !== 'chunk') return;
      const files = Object.keys(bundle).filter(
        (name) => name !== 'service-worker.js' && !/\.(map|br|gz|woff)$/.test(name),
      );
      const list = [
        '/',
        ...files.filter((name) => name !== 'index.html').map((name) => `/${name}`),
        ...readdirSync('src/web/public').map((name) => `/${name}`),
      ];
      worker.code = worker.code.replace(/\[\s*["'`]__FILES__["'`]\s*\]/, JSON.stringify(list.sort()));
    },
  };
}

/** In which language the page's files are written; the page itself goes by what its reader's browser says. */
interface Written {
  readonly language: string;
  readonly words: DocumentWords;
}

const MANIFEST = 'manifest.webmanifest';

/** The manifest of the page where it is installed: what it is, and what it is called. */
function manifestIn({ language, words }: Written): string {
  const fixed = JSON.parse(readFileSync('src/web/manifest.json', 'utf8')) as object;
  return JSON.stringify({ ...fixed, ...words.installed, lang: language });
}

const inHtml = (text: string): string =>
  text.replace(/[&<"]/g, (sign) => ({ '&': '&amp;', '<': '&lt;', '"': '&quot;' })[sign]!);

/** Puts the words of a language into the page's files. */
function inWords(written: Written): Plugin {
  const { language, words } = written;
  const places: Readonly<Record<string, string>> = {
    description: words.description,
    noScript: words.noScript,
  };
  return {
    name: 'polewise-in-words',
    transformIndexHtml: {
      order: 'pre',
      handler: (html) =>
        html
          .replace(/(?<=<html lang=")[^"]*/, language)
          .replace(/\{\{(\w+)\}\}/g, (_, name: string) => inHtml(places[name]!)),
    },
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: MANIFEST, source: manifestIn(written) });
    },
    configureServer({ middlewares }) {
      middlewares.use(`/${MANIFEST}`, (_request, reply) => {
        reply.setHeader('content-type', 'application/manifest+json');
        reply.end(manifestIn(written));
      });
    },
  };
}

/** With all that it imports: other parts speak by some of it, but it is always there before them. One script instead of three. */
const FIRST_WORDS = /\/src\/words\/en\/page\/first\.ts$/;

/** The engine, and the words of the first screens with what of the bundler they stand on. */
const EARLY = /^assets\/(?:worker|first|asking)-[^.]+\.js$/;

/** Has them and the bank on their way while the page's own script is still being read. */
function fetchedEarly(): Plugin {
  return {
    name: 'polewise-fetched-early',
    apply: 'build',
    enforce: 'post',
    transformIndexHtml: {
      order: 'post',
      handler: (_html, { bundle }) => {
        const early = Object.keys(bundle ?? {}).filter((name) => EARLY.test(name));
        const links = [
          ...early.map((name) => ({ rel: 'modulepreload', href: `/${name}` })),
          { rel: 'preload', as: 'fetch', href: '/api/bank', crossorigin: true },
        ];
        return links.map((attrs) => ({ tag: 'link', attrs, injectTo: 'head' as const }));
      },
    },
  };
}

/** Goes over every script once more: what the bundler's own minifier leaves is more than a hundredth. */
function minifiedAgain(): Plugin {
  return {
    name: 'polewise-minified-again',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      async handler(_options, bundle) {
        const again = async (code: string): Promise<string> =>
          (
            await minify(code, {
              module: true,
              ecma: 2020,
              compress: { passes: 3, sequences: false },
              format: { comments: false },
            })
          ).code!;
        for (const [name, file] of Object.entries(bundle)) {
          if (!name.endsWith('.js')) continue;
          if (file.type === 'chunk') file.code = await again(file.code);
          else file.source = await again(String(file.source));
        }
      },
    },
  };
}

/** Files that are sent compressed, once they are worth it. */
const COMPRESSIBLE = /\.(js|css|html|svg|webmanifest)$/;
const WORTH_COMPRESSING = 1024;

/** Compresses every file once, as well as it goes, so that the server sends it as it is. */
function compressed(): Plugin {
  return {
    name: 'polewise-compressed',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        for (const [name, file] of Object.entries(bundle)) {
          const source = file.type === 'chunk' ? file.code : file.source;
          if (!COMPRESSIBLE.test(name) || source.length < WORTH_COMPRESSING) continue;
          const bytes = Buffer.from(source);
          const params = { [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length };
          this.emitFile({
            type: 'asset',
            fileName: `${name}.br`,
            source: brotliCompressSync(bytes, { params }),
          });
          this.emitFile({ type: 'asset', fileName: `${name}.gz`, source: gzipSync(bytes, { level: 9 }) });
        }
      },
    },
  };
}

/**
 * Everything but the page itself only defines things: what nothing uses is left out, zod's schemas most of all, which the
 * engine doesn't need because its input has been checked.
 */
const treeshake = {
  moduleSideEffects: (id: string): boolean =>
    id.includes('/src/web/') ||
    (!/\/(src|shared)\//.test(id) && !/\/node_modules\/(zod|ts-fsrs|idb)\//.test(id)),
};

export const configIn = (written: Written): UserConfig => ({
  root: 'src/web',
  plugins: [inWords(written), fetchedEarly(), precache(), minifiedAgain(), compressed()],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  // What says of a call that it may be left out has done its work when the bundle is made.
  worker: { format: 'es', rollupOptions: { treeshake, output: { comments: { annotation: false } } } },
  build: {
    outDir: '../../dist/web',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rollupOptions: {
      treeshake,
      input: { index: 'src/web/index.html', 'service-worker': 'src/web/service-worker.ts' },
      output: {
        entryFileNames: ({ name }) =>
          name === 'service-worker' ? 'service-worker.js' : 'assets/[name]-[hash].js',
        codeSplitting: { groups: [{ name: 'first', test: FIRST_WORDS }] },
      },
    },
  },
  server: { proxy: { '/api': 'http://127.0.0.1:8024' } },
});

export default defineConfig(configIn({ language: 'en', words: document }));
