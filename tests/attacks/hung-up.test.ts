/** Requests that are never finished: who hangs up leaves no error in the log, who is slow is ended when it is documented. */
import { connect } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { type Serving, serving } from '../server/serving.ts';

let server: Serving;
afterEach(() => server.end());

const HEAD =
  'POST /api/answers HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\ncontent-length: 5000\r\n\r\n';

describe('an upload that is broken off', () => {
  it('is no fault of the server’s, nor of its store’s', async () => {
    const lines: string[] = [];
    let heard: () => void = () => undefined;
    const told = new Promise<void>((resolve) => {
      heard = resolve;
    });
    server = await serving({
      log: {
        level: 'info',
        stream: {
          write(line: string) {
            lines.push(line);
            if (/aborted|"statusCode"/.test(line)) heard();
          },
        },
      },
    });
    const address = await server.app.listen({ port: 0, host: '127.0.0.1' });
    const socket = connect(Number(new URL(address).port), '127.0.0.1');
    await new Promise<void>((resolve) => socket.once('connect', resolve));
    socket.write(`${HEAD}{"answers":[`);
    // Once the server has the head it waits for the rest.
    await new Promise((resolve) => setTimeout(resolve, 100));
    socket.resetAndDestroy();
    await told;
    const levels = lines.map((line) => (JSON.parse(line) as { level: number }).level);
    expect(levels.filter((level) => level >= 40)).toEqual([]);
    expect(lines.join('')).toContain('hung up');
  });
});
