/** Answers to the server and back: in the order in which they were given, each once by its id, however often it is tried. */

import type { z } from 'zod';
import type { AnswerResult } from '../../../shared/api.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Settings } from '../../../shared/settings.ts';
import { mergeSettings, sameSettings } from '../../memory/merge-settings.ts';
import { readLoosely } from '../loosely.ts';
import { isFromNewer } from '../renewed.ts';
import type { Local } from './database.ts';

export type Fetch = (path: string, init?: RequestInit) => Promise<Response>;

/**
 * How it went: `offline` covers every reason for which trying again later is right. `too-old`: the server is another
 * one than this page's, and what it says doesn't fit.
 */
export type SyncResult = 'done' | 'offline' | 'too-old';

/** What the page is told of what came from elsewhere. */
export interface Arrivals {
  answers(fresh: readonly AnswerRecord[]): void;
  settings(newer: Settings): void;
}

/** Answers sent in one request: small enough for a slow line. */
const BATCH = 50;
/** Answers fetched in one. */
const PAGE = 100;

type Checks = typeof import('../../../shared/api.ts') & typeof import('../../../shared/settings.ts');

/** A reply that came and fits, or why there is none. */
type Said<T> =
  | { readonly value: T }
  | { readonly value: undefined; readonly why: Exclude<SyncResult, 'done'> };
const OFFLINE = { value: undefined, why: 'offline' } as const;
const TOO_OLD = { value: undefined, why: 'too-old' } as const;

/** What a reply must look like. It is read when there is one: the first question doesn't wait for it. */
const checks = async (): Promise<Checks> => {
  const [api, settings] = await Promise.all([
    import('../../../shared/api.ts'),
    import('../../../shared/settings.ts'),
  ]);
  return { ...api, ...settings };
};

async function json<T>(
  fetching: Promise<Response>,
  schemaOf: (all: Checks) => z.ZodType<T>,
): Promise<Said<T>> {
  try {
    const response = await fetching;
    if (!response.ok) return OFFLINE;
    const value: unknown = await response.json();
    const read = readLoosely(schemaOf(await checks()), value);
    return read === undefined ? (isFromNewer(response) ? TOO_OLD : OFFLINE) : { value: read };
  } catch {
    return OFFLINE;
  }
}

const sending = (method: 'POST' | 'PUT', body: unknown): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

/** Refusals of what was sent, for which sending the same again is no use. */
const REFUSED: ReadonlySet<string> = new Set(['body-too-large', 'bad-json', 'bad-request', 'bad-value']);

/** Whether this reply is the server's own refusal, and not some network's page with the same number. */
async function isRefusal(response: Response): Promise<boolean> {
  const problem: unknown = await response.json().catch(() => undefined);
  const read = readLoosely((await checks()).apiProblem, problem);
  return read !== undefined && REFUSED.has(read.code);
}

const isMalformed = (result: AnswerResult): boolean =>
  result.result === 'refused' && result.problem.code === 'bad-answer';

async function send(local: Local, fetch: Fetch): Promise<SyncResult> {
  let most = BATCH;
  for (;;) {
    const line = await local.inLine(most);
    if (line.length === 0) return 'done';
    let refused = false;
    let newer = false;
    const asked = fetch('/api/answers', sending('POST', { answers: line.map(({ answer }) => answer) }));
    const seen = asked.then(async (response) => {
      newer = isFromNewer(response);
      if (response.status >= 400 && response.status < 500) refused = await isRefusal(response.clone());
      return response;
    });
    const said = await json(seen, ({ answerResults }) => answerResults);
    // A newer server may want them in another form, which a newer page would send: none of them is given up.
    const unsure = newer && (refused || said.value?.results.some(isMalformed));
    if (unsure) return 'too-old';
    if (said.value) {
      const { results } = said.value;
      // Kept, there already, or refused for good: none of them needs sending again. A refused one stays on this device.
      await local.arrived(line.slice(0, results.length));
      most = BATCH;
    } else if (!refused) {
      return said.why;
    } else if (line.length > 1) {
      // One of them is at fault, or all together are too much.
      most = Math.ceil(line.length / 2);
    } else {
      await local.arrived(line);
      most = BATCH;
    }
  }
}

async function fetchNew(local: Local, fetch: Fetch, arrivals: Arrivals): Promise<SyncResult> {
  for (;;) {
    const { history, last } = (await local.value('fetched')) ?? { history: null, last: 0 };
    const said = await json(
      fetch(`/api/answers?after=${last}&limit=${PAGE}`),
      ({ answerPage }) => answerPage,
    );
    if (!said.value) return said.why;
    const page = said.value;
    // Fewer answers than there were: a backup was put back that still goes by the old name.
    const restored = page.history === history && page.last < last;
    if ((page.history !== history && history !== null) || restored) {
      await local.setValue('fetched', { history: page.history, last: 0 });
      await local.sendAllAgain();
      const sent = await send(local, fetch);
      if (sent !== 'done') return sent;
      continue;
    }
    const answers = page.answers.flatMap((entry) => (entry.kind === 'answer' ? [entry.answer] : []));
    await local.takeIn(answers);
    if (answers.length > 0) arrivals.answers(answers);
    const reached = page.answers.at(-1)?.number ?? last;
    await local.setValue('fetched', { history: page.history, last: reached });
    if (reached >= page.last || page.answers.length === 0) return 'done';
    // A long history takes its time: what is answered meanwhile doesn't wait for the end of it.
    const sent = await send(local, fetch);
    if (sent !== 'done') return sent;
  }
}

/** Of each field the later change holds, here and there. */
async function exchangeSettings(local: Local, fetch: Fetch, arrivals: Arrivals): Promise<SyncResult> {
  const own = await local.value('settings');
  const said = await json(
    own ? fetch('/api/settings', sending('PUT', own)) : fetch('/api/settings'),
    ({ settings }) => settings,
  );
  if (!said.value) return said.why;
  const there = said.value;
  // Changed again while this was under way: that goes with the next exchange.
  const now = await local.value('settings');
  const merged = now ? mergeSettings(now, there) : there;
  if (!now || !sameSettings(merged, now)) {
    await local.setValue('settings', merged);
    arrivals.settings(merged);
  }
  return 'done';
}

/** Milliseconds after which a network that says nothing is as good as none. */
const PATIENCE = 60_000;

/** Sends what waits, then fetches what other devices have set and sent, the history last: it is what takes long. A request that hangs doesn't stop it for good. */
export async function synchronise(
  local: Local,
  fetch: Fetch,
  arrivals: Arrivals,
  patience = PATIENCE,
): Promise<SyncResult> {
  const within: Fetch = (path, init) => fetch(path, { ...init, signal: AbortSignal.timeout(patience) });
  for (const part of [send, exchangeSettings, fetchNew]) {
    const result = await part(local, within, arrivals);
    if (result !== 'done') return result;
  }
  return 'done';
}
