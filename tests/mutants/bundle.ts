/**
 * Bundles the tests of a folder, run where the changed code lies: each change is met by loading a few files, not hundreds.
 * Tests that put something else in a module's place (`vi.mock`) need the modules, and are left as they are.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { createVitest } from 'vitest/node';
import { BUNDLED } from './bundled.ts';

const vitest = await createVitest('test', { config: 'tests/mutants/vitest.config.ts', watch: false });
const files = (await vitest.globTestSpecifications()).map(({ moduleId }) => relative('.', moduleId));
await vitest.close();
const bundled = files.filter((file) => !/\bvi\.(?:mock|doMock)\(/.test(readFileSync(file, 'utf8')));

const built = (file: string): string => file.replace(/\.ts$/, '.js');

await build({
  configFile: false,
  logLevel: 'warn',
  plugins: [
    {
      name: 'polewise-own-place',
      enforce: 'pre',
      // A file that reads what lies beside it goes on doing so.
      transform: (code, id) =>
        id.includes('/node_modules/')
          ? null
          : code.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(id.split('?')[0]!).href)),
    },
  ],
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    ssr: true,
    outDir: BUNDLED.folder,
    emptyOutDir: false,
    copyPublicDir: false,
    minify: false,
    rollupOptions: {
      input: Object.fromEntries(bundled.map((file) => [file, file])),
      output: {
        entryFileNames: ({ name }) => built(name),
        chunkFileNames: 'parts/[name]-[hash].js',
      },
      // A module that is only run for what it does is kept.
      treeshake: false,
    },
  },
});
writeFileSync(
  BUNDLED.list,
  JSON.stringify(files.map((file) => (bundled.includes(file) ? `${BUNDLED.folder}/${built(file)}` : file))),
);
process.stdout.write(`${bundled.length} of ${files.length} test files bundled.\n`);
