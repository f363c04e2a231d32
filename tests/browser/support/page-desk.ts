/** A server on which nobody signs in under a built page, and devices; for one test file. */
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import { builtPage } from '../../support/built.ts';
import { type Devices, devices } from './devices.ts';
import { type PageServer, pageServer } from './page-server.ts';

export interface PageDesk {
  /** Where the built page is. */
  readonly folder: string;
  readonly server: PageServer;
  readonly take: Devices['take'];
}

/**
 * Sets it up and takes it down: a server for each test, or one for all of the file.
 *
 * @param folder - gives a built page, asked for each server; else it is the one that all files share
 */
export function pageDesk(
  server: 'for-each-test' | 'for-the-file',
  folder: () => Promise<string> = builtPage,
): PageDesk {
  const there = {} as { folder: string; server: PageServer };
  const [before, after] =
    server === 'for-the-file' ? [beforeAll, afterAll] : ([beforeEach, afterEach] as const);
  before(async () => {
    there.folder = await folder();
    there.server = await pageServer(there.folder);
  });
  after(() => there.server?.end());
  return Object.assign(there, { take: devices().take });
}
