import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { CONTENT_SECURITY_POLICY } from '../../src/server/safe-headers.ts';
import { type Serving, serving } from './serving.ts';

let server: Serving;
afterEach(() => server.end());

const outside = mkdtempSync(join(tmpdir(), 'polewise-page-'));
const folder = join(outside, 'web');
const script = 'export const answer = 42;\n'.repeat(200);
beforeAll(() => {
  mkdirSync(join(folder, 'assets'), { recursive: true });
  writeFileSync(join(outside, 'secret.txt'), 'secret');
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Polewise</title>');
  writeFileSync(join(folder, 'offline.js'), 'self.onfetch = null;');
  writeFileSync(join(folder, '.hidden'), 'hidden');
  writeFileSync(join(folder, 'assets', 'main-4f3a.js'), script);
  writeFileSync(join(folder, 'assets', 'main-4f3a.js.gz'), gzipSync(script));
});
afterAll(() => rmSync(outside, { recursive: true, force: true }));

const html = { accept: 'text/html,application/xhtml+xml,*/*;q=0.8' };

describe('the page', () => {
  it('is served with everything that keeps other sites out', async () => {
    server = await serving({ folder });
    const { headers, body } = await server.ask({ url: '/', headers: html });
    expect(body).toContain('<title>Polewise');
    expect(headers).toMatchObject({
      'content-security-policy': CONTENT_SECURITY_POLICY,
      'x-content-type-options': 'nosniff',
      'referrer-policy': 'no-referrer',
      'cross-origin-opener-policy': 'same-origin',
      'cache-control': 'no-cache',
    });
    for (const loose of ['unsafe-inline', 'unsafe-eval', '*', 'http:', 'https:'])
      expect(CONTENT_SECURITY_POLICY).not.toContain(loose);
  });

  it('keeps what is named by its content for ever and asks for everything else each time', async () => {
    server = await serving({ folder });
    const cache = async (url: string) => (await server.ask({ url })).headers['cache-control'];
    expect(await cache('/assets/main-4f3a.js')).toBe('public, max-age=31536000, immutable');
    expect(await cache('/offline.js')).toBe('no-cache');
    expect(await cache('/index.html')).toBe('no-cache');
  });

  it('is sent as it was compressed when it was built', async () => {
    server = await serving({ folder });
    const reply = await server.ask({
      url: '/assets/main-4f3a.js',
      headers: { 'accept-encoding': 'gzip, br' },
    });
    expect(reply.headers['content-encoding']).toBe('gzip');
    expect(reply.headers['content-type']).toContain('javascript');
    expect(reply.rawPayload.equals(gzipSync(script))).toBe(true);
    expect((await server.ask({ url: '/assets/main-4f3a.js' })).body).toBe(script);
  });

  it('answers its own addresses, so that reloading works, and nothing else', async () => {
    server = await serving({ folder });
    for (const url of ['/practise', '/lessons/changeover-pole', '/progress?x=1'])
      expect((await server.ask({ url, headers: html })).body).toContain('<title>Polewise');
    await server.refused({ url: '/practise', headers: { accept: 'application/json' } }, 'no-such-route');
    await server.refused({ url: '/missing.js', headers: html }, 'no-such-route');
    await server.refused({ url: '/api/nothing', headers: html }, 'no-such-route');
    await server.refused({ method: 'POST', url: '/practise', headers: html }, 'no-such-route');
  });

  it.each([
    '/../secret.txt',
    '/..%2fsecret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/%2e%2e/secret.txt',
    '/.hidden',
  ])('has no way out of its folder by %s', async (url) => {
    server = await serving({ folder });
    const reply = await server.ask({ url });
    expect(reply.statusCode).toBeGreaterThanOrEqual(400);
    expect(reply.body).not.toMatch(/secret|^hidden/);
  });

  it('that has not been built says how to build it', async () => {
    server = await serving();
    const reply = await server.ask({ url: '/', headers: html });
    expect(reply.statusCode).toBe(503);
    expect(reply.body).toContain('npm run build');
    expect(reply.headers['content-security-policy']).toBe(CONTENT_SECURITY_POLICY);
    expect((await server.ask({ url: '/api/health' })).statusCode).toBe(200);
  });
});
