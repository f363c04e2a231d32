/** A server that takes every request and never answers: sending gives up in time, and is tried again. */
import 'fake-indexeddb/auto';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Local } from '../../src/web/local/database.ts';
import { KeptHomework } from '../../src/web/local/homework/kept-homework.ts';
import { postWithin } from '../../src/web/local/homework/post.ts';
import { sendWaiting } from '../../src/web/local/homework/send.ts';
import { type Fetch, synchronise } from '../../src/web/local/sync.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { nobody } from './nobody.ts';

/** Milliseconds, here. */
const PATIENCE = 2_000;

/** What it does with a request: nothing, the head and half of a reply, or an answer. */
let manner: 'silent' | 'stuck' | ((path: string, body: string) => unknown) = 'silent';
let server: Server;
let asked: string[] = [];
const real = globalThis.fetch;

beforeEach(async () => {
  asked = [];
  server = createServer((request, response) => {
    asked.push(`${request.method} ${request.url}`);
    let body = '';
    request.on('data', (piece: Buffer) => {
      body += piece.toString();
    });
    request.on('end', () => {
      if (manner === 'silent') return;
      response.setHeader('content-type', 'application/json');
      if (manner === 'stuck') response.write('{"results":');
      else response.end(JSON.stringify(manner(request.url ?? '', body)));
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  // As on the page, where addresses are its own server's.
  globalThis.fetch = (path, init) => real(`http://127.0.0.1:${port}${String(path)}`, init);
});
afterEach(async () => {
  globalThis.fetch = real;
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
});

const ask: Fetch = (path, init) => fetch(path, init);

describe.each(['silent', 'stuck'] as const)('a server that is %s', (how) => {
  it('counts as no network for the answers of practice: they wait, and go when it answers again', async () => {
    const local = await Local.open(`never-${how}`);
    await local.keep(answerWith({ id: 'answer-1', learner: 'me', at: MORNING }));
    manner = how;
    expect(await synchronise(local, ask, nobody, PATIENCE)).toBe('offline');
    expect(asked).toEqual(['POST /api/answers']);
    expect(await local.waiting()).toBe(1);
    manner = (path) =>
      path === '/api/settings'
        ? { changedAt: 0, assessmentAt: null, minutesADay: null, newSkillsADay: null, placement: null }
        : path === '/api/answers'
          ? { results: [{ id: 'answer-1', result: 'kept', number: 1 }] }
          : { history: 'history-1', last: 0, corrections: 0, lines: [] };
    expect(await synchronise(local, ask, nobody, PATIENCE * 20)).toBe('done');
    expect(await local.waiting()).toBe(0);
    local.close();
  });

  it('counts as no network where only fetching hangs', async () => {
    const local = await Local.open(`fetching-${how}`);
    manner = how;
    expect(await synchronise(local, ask, nobody, PATIENCE)).toBe('offline');
    expect(asked.toSorted()).toEqual(['GET /api/recalls', 'GET /api/settings']);
    local.close();
  });

  it('counts as no network for the answers of homework', async () => {
    const kept = await KeptHomework.open(`never-homework-${how}`);
    await kept.give({
      person: 'fern',
      paper: 'paper-1',
      id: 'save-1',
      item: 0,
      answer: { kind: 'lamp-states', states: { '-H1': 'lit' } },
      chosen: [['-H1', 'lit']],
      secondsUsed: 3,
    });
    manner = how;
    expect(await sendWaiting(kept, 'fern', postWithin(PATIENCE))).toBe('later');
    expect(await kept.waitingOf('fern')).toHaveLength(1);
    manner = () => ({ now: 1000, results: [{ result: 'kept', id: 'save-1', number: 1 }] });
    expect(await sendWaiting(kept, 'fern', postWithin(PATIENCE * 20))).toBe('done');
    expect(await kept.waitingOf('fern')).toEqual([]);
    kept.close();
  });
});
