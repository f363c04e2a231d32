/** The tests that have to notice what is changed in one folder, without what only the others need. */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { HANGING, NEVER_COMES } from '../support/hanging.ts';
import { BUNDLED } from './bundled.ts';

const tests = existsSync(BUNDLED.list)
  ? readFileSync(BUNDLED.list, 'utf8')
  : (process.env['MUTANTS_TESTS'] ?? '[]');

/** Most changes are noticed by the first tests that meet them: those in short files are over soonest. */
class ShortFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const size = ({ moduleId }: TestSpecification): number => statSync(moduleId).size;
    return files.toSorted((one, other) => size(one) - size(other));
  }
}

export default defineConfig({
  test: {
    setupFiles: ['tests/support/seeded.ts'],
    include: JSON.parse(tests) as string[],
    sequence: { sequencer: ShortFirst },
    // Modules are loaded once for all files.
    isolate: false,
    server: { deps: { external: [/\/bundled\//] } },
    testTimeout: HANGING,
    hookTimeout: HANGING,
    expect: { poll: { timeout: NEVER_COMES } },
  },
});
