/** What a page of another site can make the browser of somebody who is signed in ask for. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type AtWork, atWork, routes } from './every-route.ts';

let at: AtWork;
beforeAll(async () => {
  at = await atWork();
});
afterAll(() => at.server.end());

const codeOf = (reply: { json(): unknown }): string => (reply.json() as { code: string }).code;

describe('a page of another site', () => {
  const manners: readonly Readonly<Record<string, string>>[] = [
    { origin: 'https://evil.example' },
    { origin: 'null' },
    { 'sec-fetch-site': 'cross-site' },
    // Another name under the same domain is another site's page as well.
    { 'sec-fetch-site': 'same-site' },
  ];

  it.each(routes)('gets nothing from %s and changes nothing, in the name of who may', async (...named) => {
    const [, route] = named;
    const before = await at.everything();
    for (const headers of manners) {
      const reply = await (await at.browserFor(route)).ask({ ...at.request(named), headers });
      expect([headers, reply.statusCode, codeOf(reply)]).toEqual([headers, 403, 'foreign-site']);
      expect(reply.headers['access-control-allow-origin']).toBeUndefined();
      expect(reply.headers['set-cookie']).toBeUndefined();
    }
    expect(await at.everything()).toEqual(before);
  });

  it.each(routes)('is told by no preflight that it may ask for %s', async (...named) => {
    const { url, method } = at.request(named);
    const reply = await at.server.ask({
      method: 'OPTIONS',
      url,
      headers: { origin: 'https://evil.example', 'access-control-request-method': method },
    });
    expect(reply.statusCode).toBeGreaterThanOrEqual(400);
    for (const name of Object.keys(reply.headers)) expect(name).not.toMatch(/^access-control-/);
  });

  it.each(routes.filter(([, { body }]) => body))(
    'puts nothing through to %s by a form, even in a browser that says nothing of where it comes from',
    async (...named) => {
      const [, route] = named;
      const { payload, ...request } = at.request(named);
      for (const type of [
        'text/plain',
        'application/x-www-form-urlencoded',
        'multipart/form-data; boundary=x',
      ]) {
        const browser = await at.browserFor(route);
        const headers = { 'content-type': type };
        const reply = await browser.ask({ ...request, headers, payload: JSON.stringify(payload) });
        expect([type, reply.statusCode, codeOf(reply)]).toEqual([type, 415, 'wrong-media-type']);
      }
    },
  );
});
