/** A server for a test: a store in a folder of its own, the real banks, and replies held against the contract. */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance, InjectOptions } from 'fastify';
import { expect } from 'vitest';
import type { z } from 'zod';
import {
  type AnswerResult,
  type ApiProblemCode,
  type ApiRoute,
  apiProblem,
  apiRoutes,
} from '../../shared/api.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import { createServer, type ServerOptions } from '../../src/server/index.ts';
import { API_PROBLEMS } from '../../src/server/problems.ts';
import { workHere } from '../../src/server/work/work.ts';
import { openStore, type Store, storeFile } from '../../src/store/index.ts';
import { english } from '../../src/words/en/core.ts';
import { DAY, MORNING } from '../support/answers.ts';
import { ownBank } from '../support/own-bank.ts';

export type Reply = Awaited<ReturnType<FastifyInstance['inject']>>;

/** What a route gives that doesn't give a file. */
export type ReplyOf<R extends ApiRoute> = R['reply'] extends z.ZodType ? z.output<R['reply']> : never;

export interface Serving {
  readonly app: FastifyInstance;
  readonly store: Store;
  readonly folder: string;
  /** Asks on a connection that only the test knows of, for localhost and as the page would. */
  ask(options: InjectOptions): Promise<Reply>;
  /** Asks a route and gives what it replied, which has to be of the contract's form. */
  call<R extends ApiRoute>(route: R, given?: { body?: unknown; query?: string }): Promise<ReplyOf<R>>;
  /** Asks for something that has to be refused in this way. */
  refused(options: InjectOptions, code: ApiProblemCode): Promise<{ message: string; hint: string }>;
  send(answers: readonly unknown[]): Promise<readonly AnswerResult[]>;
  end(): Promise<void>;
}

export const NOW = MORNING + 1000 * DAY;

export async function serving(
  options: Partial<ServerOptions> & {
    readonly wrap?: (store: Store) => Store;
    readonly now?: () => number;
  } = {},
): Promise<Serving> {
  const folder = mkdtempSync(join(tmpdir(), 'polewise-server-'));
  const own = await openStore({ kind: 'file', file: storeFile(folder) }, { now: options.now ?? (() => NOW) });
  const { wrap = (store) => store, ...rest } = options;
  const store = wrap(own);
  const app = await createServer({
    store,
    words: english,
    bank: ownBank(),
    folder: join(folder, 'not-built'),
    version: '0.0.0-test',
    work: workHere,
    ...rest,
  });
  const ask: Serving['ask'] = ({ headers, ...more }) =>
    app.inject({ ...more, headers: { host: 'localhost:8024', ...headers } });
  const call: Serving['call'] = async (route, { body, query = '' } = {}) => {
    const reply = await ask({
      method: route.method,
      url: `${route.path}${query}`,
      ...(body === undefined ? {} : { payload: body as object }),
    });
    expect(reply.body && reply.statusCode).toBe(200);
    if ('kind' in route.reply) throw new Error('This route gives a file.');
    return route.reply.parse(reply.json()) as never;
  };
  return {
    app,
    store,
    folder,
    ask,
    call,
    async refused(given, code) {
      const reply = await ask(given);
      expect({ status: reply.statusCode, body: reply.json() }).toMatchObject({
        status: API_PROBLEMS[code].status,
        body: { code },
      });
      const { message, hint } = apiProblem.parse(reply.json());
      expect(message).toMatch(/\S/);
      expect(hint).toMatch(/\S/);
      return { message, hint };
    },
    send: async (answers) => (await call(apiRoutes.keepAnswers, { body: { answers } })).results,
    async end() {
      await app.close();
      await own.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The answers that a server has, page by page as the page fetches them. */
export async function allAnswers(server: Serving, limit = 50): Promise<readonly AnswerRecord[]> {
  const found: AnswerRecord[] = [];
  for (let after = 0; ; ) {
    const page = await server.call(apiRoutes.answers, { query: `?after=${after}&limit=${limit}` });
    for (const entry of page.answers) if (entry.kind === 'answer') found.push(entry.answer);
    const last = page.answers.at(-1);
    if (!last) return found;
    after = last.number;
  }
}
