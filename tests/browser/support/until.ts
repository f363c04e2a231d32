import { setTimeout as wait } from 'node:timers/promises';
import type { Page } from 'playwright-core';

/** Milliseconds between two looks. */
const PAUSE = 50;

/**
 * Waits until something holds that the page has to ask for first, its store or the server. `waitForFunction` takes a promise
 * itself for yes, so it waits for nothing there.
 */
export async function until<A>(
  page: Page,
  holds: (arg: A) => boolean | Promise<boolean>,
  arg?: A,
): Promise<void> {
  while (!(await page.evaluate(holds as (arg: unknown) => boolean | Promise<boolean>, arg)))
    await wait(PAUSE);
}
