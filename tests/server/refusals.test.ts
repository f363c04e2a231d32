/** Malformed, oversized and hostile requests: each is refused with a status from 400 to 499 and a message that helps. */
import { connect } from 'node:net';
import * as fc from 'fast-check';
import type { InjectOptions } from 'fastify';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ApiRoute, answerResults, apiProblem, apiRoutes } from '../../shared/api.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { allAnswers, type Serving, serving } from './serving.ts';

let server: Serving;
beforeAll(async () => {
  server = await serving({ hosts: ['Bench.Example'] });
});
afterAll(() => server.end());

const json = { 'content-type': 'application/json' };
const routes: readonly ApiRoute[] = Object.values(apiRoutes);

describe('a request for another host', () => {
  it.each([
    'evil.example',
    'localhost.evil.example',
    'evil.example:8024',
    '127.0.0.1.evil.example',
    '10.0.0.5',
  ])('name (%j) is refused everywhere', async (host) => {
    for (const url of ['/', '/api/export', '/api/bank', '/nothing'])
      await server.refused({ url, headers: { host } }, 'foreign-host');
  });

  it.each([
    'localhost@evil.example',
    'evil.example#@localhost',
    'localhost/',
    'local host',
    '[::1',
    'localhost:x',
  ])('name made to look like this one (%j) is refused', async (host) => {
    await server.refused({ url: '/api/health', headers: { host } }, 'foreign-host');
  });

  it.each([
    'localhost',
    'LOCALHOST:8024',
    '127.0.0.1:9',
    '127.1.2.3',
    '[::1]:8024',
    'bench.example',
    'bench.example:80',
  ])('name that is this machine (%j) or was given is answered', async (host) => {
    expect((await server.ask({ url: '/api/health', headers: { host } })).statusCode).toBe(200);
  });
});

describe('a request from a page of another site', () => {
  const changes = [
    { method: 'POST', url: '/api/answers', payload: '{"answers":[1]}' },
    { method: 'PUT', url: '/api/settings', payload: '{}' },
    { method: 'DELETE', url: '/api/learner?confirm=me' },
  ] as const;

  it.each([
    { origin: 'https://evil.example' },
    { origin: 'http://localhost:3000' },
    { origin: 'null' },
    { origin: 'http://localhost.evil.example:8024' },
    { 'sec-fetch-site': 'cross-site' },
    { 'sec-fetch-site': 'same-site' },
  ])('(%j) changes nothing and reads nothing', async (headers) => {
    await server.send([answerWith({ id: 'mine', at: MORNING })]);
    for (const change of changes)
      await server.refused(
        { ...change, headers: { ...headers, ...('payload' in change ? json : {}) } },
        'foreign-site',
      );
    await server.refused({ url: '/api/export', headers }, 'foreign-site');
    expect((await allAnswers(server)).length).toBeGreaterThan(0);
  });

  it('may link to the page', async () => {
    const headers = { 'sec-fetch-site': 'cross-site', accept: 'text/html' };
    expect((await server.ask({ url: '/', headers })).headers['content-type']).toContain('text/html');
  });

  it.each([
    { origin: 'http://localhost:8024', 'sec-fetch-site': 'same-origin' },
    { 'sec-fetch-site': 'none' },
    {},
  ])('is told from one of its own (%j)', async (headers) => {
    const reply = await server.ask({
      method: 'PUT',
      url: '/api/settings',
      payload: '{}',
      headers: { ...json, ...headers },
    });
    expect(reply.statusCode).toBe(200);
  });
});

describe('every route', () => {
  const withBody = routes.filter(({ body }) => body);

  it('refuses methods that it has not got, naming those it has', async () => {
    for (const { path } of routes) {
      const known = routes.filter((route) => route.path === path).map(({ method }) => method as string);
      for (const method of ['GET', 'POST', 'PUT', 'DELETE', 'PATCH'] as const) {
        if (known.includes(method)) continue;
        const { hint } = await server.refused({ method, url: path }, 'wrong-method');
        expect(hint).toContain(known.join(', '));
      }
    }
  });

  it.each(withBody)(
    'that takes a body ($method $path) refuses what is not JSON',
    async ({ method, path: url }) => {
      const broken = ['', '{', '{"a":}', '\u0000', '{"a":1}}', "{'a':1}", 'NaN', '\ufeff{"x":', '{"a":01}'];
      for (const payload of broken) await server.refused({ method, url, payload, headers: json }, 'bad-json');
      await server.refused(
        { method, url, payload: Buffer.from([0xff, 0xfe, 0x00]), headers: json },
        'bad-json',
      );
    },
  );

  it('says where a body stops being JSON', async () => {
    const [{ method, path: url }] = withBody as [(typeof withBody)[number]];
    const told = async (payload: string) =>
      (await server.refused({ method, url, payload, headers: json }, 'bad-json')).message;
    expect(await told('{"answers":\n[,]}')).toBe(
      'The body is not JSON: in line 2, column 2, "," can\'t stand.',
    );
    expect(await told('{')).toBe('The body is not JSON: it ends too early.');
    expect(await told('')).toBe('The body is empty.');
  });

  it.each(withBody)(
    'that takes a body ($method $path) refuses keys that would change the program',
    async (route) => {
      for (const payload of [
        '{"__proto__":{"polluted":true}}',
        '{"constructor":{"prototype":{"polluted":true}}}',
        '{"answers":[{"__proto__":{"polluted":true}}]}',
      ])
        await server.refused({ method: route.method, url: route.path, payload, headers: json }, 'bad-json');
      expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
    },
  );

  it.each(withBody)(
    'that takes a body ($method $path) refuses other kinds of it',
    async ({ method, path: url }) => {
      for (const type of [
        'text/plain',
        'application/x-www-form-urlencoded',
        'multipart/form-data; boundary=x',
        'image/png',
      ])
        await server.refused(
          { method, url, payload: '{}', headers: { 'content-type': type } },
          'wrong-media-type',
        );
    },
  );

  it.each(withBody)(
    'that takes a body ($method $path) refuses one that is too large or nested without end',
    async (route) => {
      const { method, path: url } = route;
      await server.refused(
        { method, url, payload: `"${'x'.repeat(5_000_000)}"`, headers: json },
        'body-too-large',
      );
      const deep = `${'['.repeat(60_000)}${']'.repeat(60_000)}`;
      const reply = await server.ask({ method, url, payload: deep, headers: json });
      expect([400, 413]).toContain(reply.statusCode);
      const inside = await server.ask({ method, url, payload: `{"answers":[${deep}]}`, headers: json });
      expect(inside.statusCode).toBeLessThan(500);
    },
  );

  it.each([
    ['/api/answers?after=-1', 'bad-value'],
    ['/api/answers?after=1e3', 'bad-value'],
    ['/api/answers?after=', 'bad-value'],
    ['/api/answers?after=99999999999999999999', 'bad-value'],
    ['/api/answers?after=1&after=2', 'bad-value'],
    ['/api/answers?limit=0', 'bad-value'],
    ['/api/answers?limit=101', 'bad-value'],
    ['/api/answers?learner=somebody', 'bad-value'],
    ['/api/answers?__proto__=1', 'bad-value'],
    ['/api/nothing', 'no-such-route'],
    ['/api/', 'no-such-route'],
    ['/api/answers/', 'no-such-route'],
    ['/API/answers', 'no-such-route'],
    ['/api//answers', 'no-such-route'],
    ['/api/%61nswers/x', 'no-such-route'],
    ['/%', 'bad-request'],
    ['/api/answers%', 'bad-request'],
    ['/%c0%ae%c0%ae/', 'bad-request'],
    ['/favicon.ico', 'no-such-route'],
    ['/../package.json', 'no-such-route'],
    ['/..%2f..%2fpackage.json', 'no-such-route'],
    ['/.git/config', 'no-such-route'],
  ] as const)('refuses the address %s', async (url, code) => {
    await server.refused({ url }, code);
  });
});

describe('whatever is sent', () => {
  const anything = fc.oneof(
    fc.json({ maxDepth: 5 }),
    fc.string({ unit: 'binary', maxLength: 200 }),
    fc.array(fc.anything(), { maxLength: 4 }).map((answers) => safeJson({ answers })),
    fc
      .tuple(fc.string(), fc.jsonValue())
      .map(([field, value]) =>
        safeJson({ answers: [{ ...answerWith({ id: 'fuzz', at: MORNING }), [field]: value }] }),
      ),
    fc
      .constantFrom(
        'id',
        'at',
        'skill',
        'circuit',
        'question',
        'answer',
        'mark',
        'attempt',
        'grade',
        'learner',
      )
      .chain((field) =>
        fc
          .jsonValue()
          .map((value) =>
            safeJson({ answers: [{ ...answerWith({ id: 'fuzz', at: MORNING }), [field]: value }] }),
          ),
      ),
  );
  const addresses = fc.oneof(
    fc.constantFrom(...routes.map(({ path }) => path)),
    fc
      .tuple(fc.constantFrom(...routes.map(({ path }) => path)), fc.webQueryParameters())
      .map(([path, query]) => `${path}?${query}`),
    fc.webPath().map((path) => `/${path}`),
  );
  const requests = fc.record({
    method: fc.constantFrom(
      'GET' as const,
      'POST' as const,
      'PUT' as const,
      'DELETE' as const,
      'PATCH' as const,
    ),
    url: addresses,
    payload: anything,
    headers: fc.record({
      'content-type': fc.constantFrom('application/json', 'text/plain', 'application/json; x=1'),
    }),
  });

  it('is either done or refused in words, and never a fault', async () => {
    await fc.assert(
      fc.asyncProperty(requests, async (request: InjectOptions) => {
        const reply = await server.ask(request);
        expect(reply.statusCode).toBeLessThan(500);
        expect(reply.headers['content-security-policy']).toContain("default-src 'none'");
        if (reply.statusCode >= 400) {
          expect(apiProblem.parse(reply.json()).message).not.toMatch(/\n\s+at /);
          expect(Object.keys(reply.json()).sort()).toEqual(['code', 'hint', 'message']);
        } else if (request.method === 'POST') answerResults.parse(reply.json());
      }),
      { numRuns: 1500 },
    );
  });
});

/** JSON of a value that may hold what JSON hasn't got. */
function safeJson(value: unknown): string {
  try {
    return JSON.stringify(value, (_, inner) => (typeof inner === 'bigint' ? String(inner) : inner)) ?? 'null';
  } catch {
    return 'null';
  }
}

describe('what is hardly a request', () => {
  const tell = (text: string): Promise<string> =>
    new Promise((resolve, reject) => {
      const address = server.app.server.address();
      if (!address || typeof address === 'string') throw new Error('not listening');
      const socket = connect(address.port, '127.0.0.1');
      let heard = '';
      socket.setEncoding('utf8');
      socket.on('data', (piece: string) => {
        heard += piece;
      });
      socket.on('error', reject);
      socket.on('close', () => resolve(heard));
      socket.end(text);
    });
  beforeAll(async () => {
    await server.app.listen({ host: '127.0.0.1', port: 0 });
  });

  it.each([
    ['nonsense', 'hello\r\n\r\n', 400, 'bad-request'],
    ['an unknown method', 'FROB / HTTP/1.1\r\nhost: localhost\r\n\r\n', 400, 'bad-request'],
    [
      'two lengths',
      'POST / HTTP/1.1\r\nhost: localhost\r\ncontent-length: 1\r\ncontent-length: 2\r\n\r\nx',
      400,
      'bad-request',
    ],
    [
      'headers without end',
      `GET / HTTP/1.1\r\nhost: localhost\r\nx: ${'y'.repeat(20_000)}\r\n\r\n`,
      431,
      'headers-too-large',
    ],
  ])('%s is answered and hung up on', async (_, text, status, code) => {
    const [head, body] = (await tell(text)).split('\r\n\r\n');
    expect(head).toContain(`HTTP/1.1 ${status} `);
    expect(apiProblem.parse(JSON.parse(body!)).code).toBe(code);
  });

  it('goes on answering afterwards', async () => {
    expect(await tell('GET /api/health HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\n\r\n')).toContain(
      '"alive"',
    );
    expect(await tell('GET /api/health HTTP/1.0\r\n\r\n')).toContain('foreign-host');
  });
});
