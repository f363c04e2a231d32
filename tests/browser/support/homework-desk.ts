/** A class with its tutor and learners, all signed in, and devices for them; for one test file. */
import type { BrowserContextOptions } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { builtPage } from '../../support/built.ts';
import { type Device, type Devices, devices } from './devices.ts';
import { HomeworkServer, type Somebody } from './homework-server.ts';

export interface HomeworkDesk {
  readonly server: HomeworkServer;
  /** A device on which somebody is signed in, closed after the test; nothing on it may have complained. */
  takeOf(who: Somebody, options: BrowserContextOptions): Promise<Device>;
  /** One on which nobody is. */
  readonly take: Devices['take'];
}

/**
 * Sets it up before the tests of the file and takes it down after them.
 *
 * @param folder - gives a built page; else it is the one that all files share
 */
export function homeworkDesk(
  names: readonly string[],
  folder: () => Promise<string> = builtPage,
): HomeworkDesk {
  const there = {} as { server: HomeworkServer };
  beforeAll(async () => {
    there.server = await HomeworkServer.begin(await folder(), names);
  });
  afterAll(() => there.server?.end());
  const { take } = devices();
  return Object.assign(there, {
    take,
    async takeOf(who: Somebody, options: BrowserContextOptions) {
      const opened = await take(options);
      await opened.context.addCookies([there.server.cookieOf(who)]);
      return opened;
    },
  });
}
