/** Tests of the page wait for what they say they wait for. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const folder = resolve(fileURLToPath(import.meta.url), '../../browser');
/** A promise counts as yes there, whatever it comes to. */
const NEVER_WAITS = /waitForFunction\(\s*(?:async\b|\([^)]*\)\s*=>\s*new Promise)/;

it('is asked of `until`, where the page has to ask first: `waitForFunction` waits for no promise', () => {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    name.endsWith('.ts'),
  );
  expect(files.length).toBeGreaterThan(10);
  expect(files.filter((name) => NEVER_WAITS.test(readFileSync(join(folder, name), 'utf8')))).toEqual([]);
});
