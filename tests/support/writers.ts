import { fork } from 'node:child_process';
import { once } from 'node:events';
import { builtProgram } from './built.ts';
import type { WriterJob } from './writer-child.ts';

/** Runs several programs that write into one store at the same time, and waits for all. */
export async function writeAtOnce(jobs: readonly WriterJob[]): Promise<void> {
  const file = await builtProgram('tests/support/writer-child.ts');
  const children = jobs.map(() => fork(file, [], { execArgv: [] }));
  await Promise.all(children.map((child) => once(child, 'message')));
  await Promise.all(
    children.map(async (child, at) => {
      child.send(jobs[at]!);
      const [code] = await once(child, 'exit');
      if (code !== 0) throw new Error(`A writer ended with code ${code}.`);
    }),
  );
}
