/**
 * Builds the page and the programs once for a whole run of tests, each when the first test asks for it. Test files run in
 * processes of their own, so they ask over HTTP (`built.ts`); what they get is only there to be read.
 */
import { execFile } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdirSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { TestProject } from 'vitest/node';
import { buildPage } from './build-page.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
/** Under node_modules, so that built programs find their packages as installed ones do. */
const PLACE = join(root, 'node_modules');
const NAME = /^\.polewise-tests-(\d+)$/;

const lives = (pid: number): boolean => {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
};

/** Takes away what runs have left that were killed. */
function clearOthers(): void {
  for (const name of readdirSync(PLACE)) {
    const pid = Number(NAME.exec(name)?.[1]);
    if (pid && !lives(pid)) rmSync(join(PLACE, name), { recursive: true, force: true });
  }
}

/** Everything under `src` and the programs of the tests, compiled as for delivery, with what they read beside them. */
async function buildPrograms(folder: string): Promise<string> {
  // Types are checked elsewhere; a half-made change has to run too.
  const words = [
    join(PLACE, 'typescript/bin/tsc'),
    '-p',
    'tests/support/tsconfig.programs.json',
    '--noCheck',
    '--outDir',
    folder,
  ];
  await promisify(execFile)(process.execPath, words, { cwd: root });
  for (const name of ['package.json', 'question-banks'])
    cpSync(join(root, name), join(folder, name), { recursive: true });
  return folder;
}

export default async function builtOnce(project: TestProject): Promise<() => Promise<void>> {
  clearOthers();
  const folder = join(PLACE, `.polewise-tests-${process.pid}`);
  mkdirSync(folder, { recursive: true });
  let changes = 0;
  const making: Readonly<Record<string, () => Promise<string>>> = {
    page: () => buildPage(join(folder, `page-${changes}`)),
    programs: () => buildPrograms(join(folder, `programs-${changes}`)),
  };
  const made = new Map<string, Promise<string>>();
  project.onTestsRerun(() => {
    changes++;
    made.clear();
  });
  const server = createServer(({ url = '' }, reply) => {
    const name = url.slice(1);
    const build =
      made.get(name) ?? making[name]?.() ?? Promise.reject(new Error(`There is no build ${name}.`));
    made.set(name, build);
    build.then(
      (there) => reply.end(there),
      (error: { message: string; stdout?: string }) => {
        reply.statusCode = 500;
        reply.end(`${error.message}\n${error.stdout ?? ''}`);
      },
    );
  });
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  project.provide('builds', `http://127.0.0.1:${(server.address() as AddressInfo).port}`);
  return async () => {
    server.closeAllConnections();
    server.close();
    await Promise.allSettled(made.values());
    rmSync(folder, { recursive: true, force: true });
  };
}
