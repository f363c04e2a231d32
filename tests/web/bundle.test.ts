import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { builtPage } from '../support/built.ts';

/** Issue: page script for practising, main and engine together, as transferred. */
const MOST_BYTES = 110 * 1024;

let folder: string;
const text = (name: string): string => readFileSync(join(folder, name), 'utf8');

/** A script with everything it imports before it runs; what it imports later is left out. */
function withImports(name: string, found = new Set<string>()): Set<string> {
  if (found.has(name)) return found;
  found.add(name);
  for (const [, file] of text(name).matchAll(/(?:from|import)\s*["'`]\.\/([^"'`]+\.js)["'`]/g))
    withImports(`assets/${file}`, found);
  return found;
}

/** The file that is sent: what is too small to gain by it isn't compressed. */
const sentAs = (name: string): string => (existsSync(join(folder, `${name}.br`)) ? `${name}.br` : name);

/** The scripts that are fetched before the first question is drawn. */
function practising(): Set<string> {
  const [, main] = text('index.html').match(/<script[^>]+src="\/(assets\/[^"]+\.js)"/) ?? [];
  const worker = readdirSync(join(folder, 'assets')).find((name) => /^worker-[^.]+\.js$/.test(name));
  if (!main || !worker) throw new Error('the built page has no main script or no engine');
  return withImports(`assets/${worker}`, withImports(main));
}

beforeAll(async () => {
  folder = await builtPage();
});

describe('the built page', () => {
  it('needs at most 110 kB of compressed script to practise', () => {
    const sizes = [...practising()].map((name) => ({
      name,
      bytes: statSync(join(folder, sentAs(name))).size,
    }));
    const bytes = sizes.reduce((sum, entry) => sum + entry.bytes, 0);
    expect(bytes, JSON.stringify(sizes)).toBeLessThan(MOST_BYTES);
    expect(bytes).toBeGreaterThan(20 * 1024);
  });

  it('checks what comes from elsewhere only after the first question: no schema is in the first scripts', () => {
    for (const name of practising()) expect(text(name), name).not.toMatch(/ZodError|invalid_union/);
    const later = readdirSync(join(folder, 'assets')).filter((name) => name.endsWith('.js'));
    expect(later.some((name) => /invalid_union/.test(text(`assets/${name}`)))).toBe(true);
  });

  it('has every script, style and letter in the list that is kept for days without network', () => {
    const worker = text('service-worker.js');
    expect(worker).not.toContain('__FILES__');
    const needed = readdirSync(join(folder, 'assets')).filter((name) => /\.(js|css|woff2)$/.test(name));
    expect(needed.length).toBeGreaterThan(10);
    for (const name of needed) expect(worker).toContain(`/assets/${name}`);
    for (const [, path] of worker.matchAll(/["'`](\/[^"'`]*)["'`]/g))
      if (path !== '/' && !path?.startsWith('/api'))
        expect(existsSync(join(folder, path ?? '')), path).toBe(true);
  });

  it('asks nobody else for anything, and needs no exception from a strict policy', () => {
    const html = text('index.html');
    expect(html).not.toMatch(/<script(?![^>]*\bsrc=)[^>]*>/);
    expect(html).not.toMatch(/<style|\bon[a-z]+=|style=/);
    for (const name of readdirSync(join(folder, 'assets')).filter((file) => file.endsWith('.css')))
      expect(text(`assets/${name}`), name).not.toMatch(/https?:|@import/);
    expect(html.match(/https?:/g)).toBeNull();
  });

  it('is compressed beforehand: what is unpacked is what stands beside it', () => {
    const files = readdirSync(join(folder, 'assets')).filter((name) => name.endsWith('.br'));
    expect(files.length).toBeGreaterThan(5);
    for (const name of files) {
      const plain = join(folder, 'assets', basename(name, '.br'));
      expect(statSync(plain).size).toBeGreaterThan(statSync(join(folder, 'assets', name)).size);
    }
  });
});
