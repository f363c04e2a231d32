/**
 * Builds the page and the programs once for a whole run of tests, each when the first test asks for it. Test files run in
 * processes of their own, so they ask over HTTP (`built.ts`); what they get is only there to be read.
 */
import { once } from 'node:events';
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { buildPage, buildPageMadeUp } from './build-page.ts';
import { buildPrograms, PLACE } from './build-programs.ts';

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

export default async function builtOnce(project: TestProject): Promise<() => Promise<void>> {
  clearOthers();
  const folder = join(PLACE, `.polewise-tests-${process.pid}`);
  mkdirSync(folder, { recursive: true });
  let changes = 0;
  const making: Readonly<Record<string, () => Promise<string>>> = {
    page: () => buildPage(join(folder, `page-${changes}`)),
    'page-made-up': () => buildPageMadeUp(join(folder, `page-made-up-${changes}`)),
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
