import { join } from 'node:path';
import { defineConfig, normalizePath, type Plugin } from 'vite';
import { BUILT_FROM, digestOfSources, ROOT } from './tools/sources.js';

const OWN = ['src', 'shared'].map((folder) => `${normalizePath(join(ROOT, folder))}/`);

/**
 * A program that runs in a thread of its own is named by its source, `new URL('./thread.ts', import.meta.url)`. It is built
 * beside the others, and named as it is built.
 */
function threads(): Plugin {
  const NAMED = /new URL\('(\.[^']*\.ts)', import\.meta\.url\)/g;
  return {
    name: 'polewise-threads',
    enforce: 'pre',
    async transform(code, id) {
      const built = new Map<string, string>();
      for (const [, source = ''] of code.matchAll(NAMED)) {
        const there = await this.resolve(source, id);
        if (!there) this.error(`${source} is not there.`);
        built.set(source, this.emitFile({ type: 'chunk', id: there.id, preserveSignature: 'strict' }));
      }
      if (built.size === 0) return null;
      return code.replace(
        NAMED,
        (_, source: string) => `new URL(import.meta.ROLLUP_FILE_URL_${built.get(source)})`,
      );
    },
    resolveFileUrl: ({ relativePath }) => `new URL('${relativePath}', import.meta.url).href`,
  };
}

/** Says what it was built from: as it was when building began, so that what changes meanwhile makes it out of date. */
function builtFrom(): Plugin {
  let digest = '';
  return {
    name: 'polewise-built-from',
    buildStart() {
      digest = digestOfSources();
    },
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: BUILT_FROM, source: digest });
    },
  };
}

/**
 * The command line, in parts that are read when a command needs them. It loads the fewer files the sooner it begins: what
 * belongs together is one file, and the two packages that stand in most commands' way are in it. The others are taken from
 * node_modules; some of them have native parts or look for their own files.
 */
export default defineConfig({
  plugins: [threads(), builtFrom()],
  build: {
    ssr: true,
    outDir: 'dist/program',
    emptyOutDir: true,
    target: 'node20.12',
    copyPublicDir: false,
    rollupOptions: {
      input: { 'src/cli/main': 'src/cli/main.ts', 'src/cli/keep-bank': 'src/cli/keep-bank.ts' },
      output: { entryFileNames: '[name].js', chunkFileNames: 'parts/[name]-[hash].js' },
      treeshake: {
        // All of these only define things: a schema that a command doesn't use isn't made when it begins.
        moduleSideEffects: (id) =>
          !OWN.some((folder) => id.startsWith(folder)) && !id.includes('/node_modules/zod/'),
      },
    },
  },
  ssr: { noExternal: ['commander', 'zod'] },
});
