/** A server that people sign in to, its administrator at a desk, and devices for everybody else; for one test file. */
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { builtPage } from '../../support/built.ts';
import { launch } from './chromium.ts';
import { comeFirst, makeClass } from './coming-in.ts';
import { HomeworkServer } from './homework-server.ts';
import { DESK, device } from './practising.ts';

export interface ClassDesk {
  readonly folder: string;
  readonly server: HomeworkServer;
  /** Where the administrator is signed in. */
  readonly desk: Page;
  /** A device of its own, closed after the test; nothing on it may have complained. */
  take(options: BrowserContextOptions): Promise<{ context: BrowserContext; page: Page }>;
  /** A class of the administrator. */
  newClass(title: string): Promise<{ code: string; id: string }>;
}

/** Sets it up before the tests of the file and takes it down after them. */
export function classDesk(): ClassDesk {
  const there = {} as { folder: string; server: HomeworkServer; desk: Page };
  let browser: Browser;
  const open: { context: BrowserContext; complaints: readonly string[] }[] = [];
  beforeAll(async () => {
    browser = await launch();
    there.folder = await builtPage();
    there.server = await HomeworkServer.begin(there.folder, []);
    there.desk = (await device(browser, DESK)).page;
    await comeFirst(there.desk, there.server, 'Iris Kalmar');
  });
  afterAll(async () => {
    await browser?.close();
    await there.server?.end();
  });
  afterEach(async () => {
    for (const { context, complaints } of open.splice(0)) {
      await context.close();
      expect(complaints).toEqual([]);
    }
  });
  return Object.assign(there, {
    async take(options: BrowserContextOptions) {
      const { context, page, complaints } = await device(browser, options);
      open.push({ context, complaints });
      return { context, page };
    },
    async newClass(title: string) {
      await there.desk.goto(`${there.server.address}/#/classes`);
      return makeClass(there.desk, title);
    },
  });
}
