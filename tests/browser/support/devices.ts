/** The browser of one test file, and the devices in it. */
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { launch } from './chromium.ts';
import { device } from './practising.ts';

export interface Device {
  readonly context: BrowserContext;
  readonly page: Page;
}

export interface Devices {
  /** One more device, closed after the test; nothing on it may have complained. */
  take(options: BrowserContextOptions): Promise<Device>;
  /** One that stays until the file is done. */
  stay(options: BrowserContextOptions): Promise<Device>;
}

/**
 * Opens the browser before the tests of the file, and closes it after them. What is set up before this is asked for is taken
 * down after the devices: a server isn't missed by a page that is still open.
 */
export function devices(): Devices {
  let browser: Browser;
  const open: Awaited<ReturnType<typeof device>>[] = [];
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(() => browser?.close());
  afterEach(async () => {
    const complained: string[] = [];
    for (const { context, complaints } of open.splice(0)) {
      await context.close();
      complained.push(...complaints);
    }
    expect(complained).toEqual([]);
  });
  return {
    async take(options) {
      const opened = await device(browser, options);
      open.push(opened);
      return opened;
    },
    stay: (options) => device(browser, options),
  };
}
