/** A server that is stopped finishes what has begun. One that is killed: tests/faults/killed.test.ts. */
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { answerResults } from '../../shared/api.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import { openStore, storeFile } from '../../src/store/index.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { type Served, served } from './served.ts';

const root = mkdtempSync(join(tmpdir(), 'polewise-stopping-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));
let made = 0;
const freshFolder = (): string => join(root, `${++made}`);

let running: Served | undefined;
afterEach(async () => {
  if (running?.child.exitCode === null && running.child.signalCode === null) await running.end('SIGKILL');
});

/** Sends answers; the ids that were acknowledged. Rejects when the connection breaks. */
const post = async (address: string, answers: readonly AnswerRecord[]): Promise<readonly string[]> => {
  const reply = await fetch(`${address}/api/answers`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ answers }),
  });
  if (!reply.ok) throw new Error(`${reply.status} ${await reply.text()}`);
  return answerResults.parse(await reply.json()).results.map(({ id }) => id!);
};

describe('a server that is stopped', () => {
  it.each(['SIGTERM', 'SIGINT'] as const)(
    'by %s ends with code 0, and its answers are kept',
    async (signal) => {
      const folder = freshFolder();
      running = await served(['--data', folder]);
      await post(running.address, [answerWith({ id: 'one', at: MORNING })]);
      expect(await running.end(signal)).toBe(0);
      expect(running.printed()).toContain('every answer is kept');
      const store = await openStore({ kind: 'file', file: storeFile(folder) });
      expect(await store.answersOf('me')).toHaveLength(1);
      await store.close();
    },
  );

  it('finishes a request that has begun and takes no other', async () => {
    running = await served(['--data', freshFolder()]);
    const { address } = running;
    const body = JSON.stringify({ answers: [answerWith({ id: 'slow', at: MORNING })] });
    const agent = new Agent({ keepAlive: true });
    const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) };
    const slow = request(`${address}/api/answers`, { method: 'POST', headers, agent });
    const reply = new Promise<{ status: number | undefined; connection: string | undefined; text: string }>(
      (resolve, reject) => {
        slow.on('error', reject);
        slow.on('response', (response) => {
          let text = '';
          response.setEncoding('utf8').on('data', (piece: string) => {
            text += piece;
          });
          response.on('end', () =>
            resolve({ status: response.statusCode, connection: response.headers.connection, text }),
          );
        });
      },
    );
    slow.write(body.slice(0, 100));
    // Another request, so that the server has surely begun with the first one.
    await fetch(`${address}/api/health`, { headers: { connection: 'close' } });
    const ended = running.end('SIGTERM');
    await expect
      .poll(() => fetch(`${address}/api/health`, { headers: { connection: 'close' } }).catch(() => 'refused'))
      .toBe('refused');
    slow.end(body.slice(100));
    expect(await reply).toMatchObject({
      status: 200,
      connection: 'close',
      text: expect.stringContaining('"kept"'),
    });
    expect(await ended).toBe(0);
    agent.destroy();
  });
});

/** One whose database is away waits for it: tests/faults/postgres-restart.test.ts. */
describe('a server that can not begin', () => {
  it.each([
    [['--host', '0.0.0.0'], {}, /nobody has to sign in/],
    [['--port', '70000'], {}, /--port 70000/],
    [['--data', '/dev/null/folder'], {}, /practice\.sqlite: The store cannot be reached/],
    [['--log', 'loud'], {}, /loud/],
  ])('with %j says why and ends with code 2', async (options, environment, why) => {
    const error = await served([...options], environment).catch((thrown: Error) => thrown);
    expect(String(error)).toMatch(why);
    expect(String(error)).toContain('code 2');
    expect(String(error)).not.toMatch(/\n\s+at /);
  });

  it('because its port is taken says so', async () => {
    running = await served(['--data', freshFolder()]);
    const port = new URL(running.address).port;
    await expect(served(['--data', freshFolder(), '--port', port])).rejects.toThrow(/is taken/);
  });
});
