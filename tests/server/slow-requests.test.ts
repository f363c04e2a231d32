/** Requests that never arrive whole: ended when docs/api.md says, whatever trickles in meanwhile. */
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { apiProblem } from '../../shared/api.ts';
import { type Serving, serving } from './serving.ts';

let server: Serving;
let port: number;
beforeAll(async () => {
  server = await serving();
  port = Number(new URL(await server.app.listen({ host: '127.0.0.1', port: 0 })).port);
});
afterAll(() => server.end());

/** Sends a beginning, then a byte a second without end; gives what was replied when the server hung up. */
const trickle = (beginning: string, byte: string): Promise<string> =>
  new Promise((resolve) => {
    const socket = connect(port, '127.0.0.1');
    let heard = '';
    socket.setEncoding('utf8');
    socket.on('data', (piece: string) => {
      heard += piece;
    });
    // A byte that was under way when the server hung up.
    socket.on('error', () => undefined);
    socket.write(beginning);
    const more = setInterval(() => socket.write(byte), 1000);
    socket.on('close', () => {
      clearInterval(more);
      resolve(heard);
    });
  });

const HEAD = 'host: localhost\r\n';

describe('a request that arrives byte by byte', () => {
  it.concurrent.each([
    ['in its headers', `GET /api/health HTTP/1.1\r\n${HEAD}x: `, 'y'],
    [
      'in its body',
      `POST /api/answers HTTP/1.1\r\n${HEAD}content-type: application/json\r\ncontent-length: 9000\r\n\r\n{`,
      ' ',
    ],
  ])('%s is hung up on, and told why in words', async (_, beginning, byte) => {
    const [head, body] = (await trickle(beginning, byte)).split('\r\n\r\n');
    expect(head).toContain('HTTP/1.1 408 ');
    expect(apiProblem.parse(JSON.parse(body!))).toMatchObject({ code: 'too-slow' });
    // Nobody else waited for it.
    expect((await server.ask({ url: '/api/health' })).statusCode).toBe(200);
  });

  it('has the times that docs/api.md gives', async () => {
    const { requestTimeout, headersTimeout } = server.app.server;
    expect([requestTimeout, headersTimeout]).toEqual([25_000, 25_000]);
  });
});
