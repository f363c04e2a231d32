import type { Reporter, TestModule } from 'vitest/node';

/** Ends a run with one plain line, `N passed, N failed, N skipped`, that any build server can read. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[]): void {
    const counts = { passed: 0, failed: 0, skipped: 0, pending: 0 };
    for (const module of modules)
      for (const test of module.children.allTests()) counts[test.result().state]++;
    // A file that failed to load, or an error outside a test, is a failure although no test says so.
    const broken = modules.filter(
      (module) => module.state() === 'failed' && module.children.size === 0,
    ).length;
    const failed = counts.failed + counts.pending + broken + errors.length;
    process.stdout.write(`\n${counts.passed} passed, ${failed} failed, ${counts.skipped} skipped\n`);
  }
}
