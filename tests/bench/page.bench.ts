/** What a learner waits for on the page, with a processor slowed four times; and how much script practising needs. */

import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { createServer } from '../../src/server/index.ts';
import { openStore, storeFile } from '../../src/store/index.ts';
import { english } from '../../src/words/en/core.ts';
import { launch } from '../browser/support/chromium.ts';
import { buildPage } from '../support/build-page.ts';
import { ownBank } from '../support/own-bank.ts';

export interface Row {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly bound?: number;
}

const SLOWED = 4;
const VISITS = 5;
const QUESTIONS = 12;

/**
 * Runs in the page before its own script: when the first drawing stands there, how long each next one takes from the
 * touch to the picture, and how long the engine works, which the browser's slowing doesn't reach.
 */
const WATCH = `(() => {
  const seen = { first: 0, nexts: [], engine: 0, script: '' };
  globalThis.watched = seen;
  const Own = globalThis.Worker;
  globalThis.Worker = class extends Own {
    constructor(...given) { super(...given); this.busySince = 0; this.open = 0; seen.script = String(given[0]);
      this.addEventListener('message', () => { this.open--; if (this.open <= 0 && this.busySince) { seen.engine += performance.now() - this.busySince; this.busySince = 0; } }); }
    postMessage(...given) { this.open++; this.busySince ||= performance.now(); super.postMessage(...given); }
  };
  let pressed = 0; let engineBefore = 0;
  addEventListener('click', ({ target }) => { if (target.textContent === 'Next') { pressed = performance.now(); engineBefore = seen.engine; } }, true);
  const look = () => {
    const image = document.querySelector('.question .lines img');
    const asking = document.querySelector('.bar button[type=submit]');
    if (!image || !image.complete || !asking) return;
    if (!seen.first) seen.first = { at: performance.now(), engine: seen.engine };
    if (pressed) { seen.nexts.push({ took: performance.now() - pressed, engine: seen.engine - engineBefore }); pressed = 0; }
  };
  const every = () => { look(); requestAnimationFrame(every); };
  requestAnimationFrame(every);
})()`;

interface Watched {
  /** Where the engine's script is. */
  readonly script: string;
  readonly first: { readonly at: number; readonly engine: number };
  readonly nexts: readonly { readonly took: number; readonly engine: number }[];
}

const slow = async (page: Page, rate: number): Promise<void> => {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate });
};

const median = (values: readonly number[]): number =>
  values.toSorted((one, other) => one - other)[values.length >> 1] ?? 0;

/** Milliseconds from making an engine to its first word, by a page that isn't slowed. */
const engineStart = (page: Page, script: string): Promise<number> =>
  page.evaluate(
    (url) =>
      new Promise<number>((resolve) => {
        const from = performance.now();
        const { Worker: Made } = globalThis as unknown as {
          Worker: new (at: string, how: object) => EngineLike;
        };
        const engine = new Made(url, { type: 'module' });
        engine.addEventListener('message', () => resolve(performance.now() - from));
        engine.postMessage({ number: 0, name: 'placing', take: { answers: [] } });
      }),
    script,
  );

interface EngineLike {
  addEventListener(name: 'message', heard: () => void): void;
  postMessage(message: unknown): void;
}

async function visit(
  browser: Browser,
  address: string,
  { questions = 0, rate = SLOWED } = {},
): Promise<Watched & { readonly start: number }> {
  const context = await browser.newContext({
    viewport: { width: 360, height: 740 },
    hasTouch: true,
    isMobile: true,
  });
  const page = await context.newPage();
  await page.addInitScript(WATCH);
  await slow(page, rate);
  await page.goto(address);
  const submit = page.locator('.bar button[type=submit]');
  await submit.waitFor();
  for (let question = 0; question < questions; question++) {
    for (const item of await page.locator('.talk fieldset.item').all()) {
      const radio = item.locator('input[type=radio]').first();
      if ((await radio.count()) > 0) await radio.check();
      else await item.locator('input[type=text]').fill('24');
    }
    await submit.click();
    // Whoever reads the mark takes longer than the next question takes to be made ready.
    await page.waitForSelector('.explained');
    await page.waitForTimeout(1500);
    await page.locator('.bar .main').click();
    await submit.waitFor();
  }
  await page.waitForFunction((count) => {
    const { watched } = globalThis as unknown as { watched: Watched };
    return Boolean(watched.first) && watched.nexts.length === count;
  }, questions);
  const watched = await page.evaluate(() => (globalThis as unknown as { watched: Watched }).watched);
  const start = rate === 1 ? await engineStart(page, watched.script) : 0;
  await context.close();
  return { ...watched, start };
}

/** Compressed bytes of the scripts that are fetched before the first question. */
function scriptBytes(folder: string): number {
  const assets = join(folder, 'assets');
  const main =
    /src="\/assets\/([^"]+\.js)"/.exec(readFileSync(join(folder, 'index.html'), 'utf8'))?.[1] ?? '';
  const found = new Set<string>();
  const take = (name: string): void => {
    if (found.has(name)) return;
    found.add(name);
    for (const [, file] of readFileSync(join(assets, name), 'utf8').matchAll(
      /(?:from|import)\s*["'`]\.\/([^"'`]+\.js)["'`]/g,
    ))
      if (file) take(file);
  };
  take(main);
  take(readdirSync(assets).find((name) => /^worker-[^.]+\.js$/.test(name)) ?? '');
  // What is too small to gain by it isn't compressed.
  const sentAs = (name: string): string => (existsSync(join(assets, `${name}.br`)) ? `${name}.br` : name);
  return [...found].reduce((sum, name) => sum + statSync(join(assets, sentAs(name))).size, 0);
}

export async function bench(): Promise<Row[]> {
  const folder = await buildPage(join(mkdtempSync(join(tmpdir(), 'polewise-page-')), 'web'));
  const data = mkdtempSync(join(tmpdir(), 'polewise-bench-'));
  const store = await openStore({ kind: 'file', file: storeFile(data) });
  const app = await createServer({
    store,
    bank: ownBank(),
    words: english,
    folder,
    version: '0.0.0-bench',
  });
  const address = await app.listen({ host: '127.0.0.1', port: 0 });
  const browser = await launch();
  try {
    const firsts: number[] = [];
    const engines: number[] = [];
    for (let number = 0; number < VISITS; number++) {
      firsts.push((await visit(browser, address)).first.at);
      const { first, start } = await visit(browser, address, { rate: 1 });
      engines.push(start + first.engine);
    }
    const { nexts } = await visit(browser, address, { questions: QUESTIONS });
    const waits = nexts.map(({ took }) => took);
    return [
      {
        name: `page: first question drawn, ${SLOWED} times slowed`,
        // The browser slows the page alone: what the engine takes, its start included, is added as often as is missing.
        value: median(firsts) + (SLOWED - 1) * median(engines),
        unit: 'ms',
        bound: 1500,
      },
      {
        name: `page: next question, ${SLOWED} times slowed, median`,
        value: median(waits),
        unit: 'ms',
        bound: 100,
      },
      { name: `page: next question, ${SLOWED} times slowed, slowest`, value: Math.max(...waits), unit: 'ms' },
      {
        name: 'page: script to practise, compressed',
        value: scriptBytes(folder) / 1024,
        unit: 'kB',
        bound: 110,
      },
    ];
  } finally {
    await browser.close();
    await app.close();
    await store.close();
    rmSync(data, { recursive: true, force: true });
    rmSync(dirname(folder), { recursive: true, force: true });
  }
}
