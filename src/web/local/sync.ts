/** Answers to the server and back: in the order in which they were given, each once by its id, however often it is tried. */
import type { z } from 'zod';
import { answerPage, answerResults, MOST_ANSWERS } from '../../../shared/api.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Local } from './database.ts';

export type Fetch = (path: string, init?: RequestInit) => Promise<Response>;

/** How it went: `offline` covers every reason for which trying again later is right. */
export type SyncResult = 'done' | 'offline';

/** Answers sent in one request: small enough for a slow line. */
const BATCH = Math.min(50, MOST_ANSWERS);

async function json<T>(fetching: Promise<Response>, schema: z.ZodType<T>): Promise<T | undefined> {
  try {
    const response = await fetching;
    if (!response.ok) return undefined;
    const read = schema.safeParse(await response.json());
    return read.success ? read.data : undefined;
  } catch {
    return undefined;
  }
}

async function send(local: Local, fetch: Fetch): Promise<SyncResult> {
  for (;;) {
    const line = await local.inLine(BATCH);
    if (line.length === 0) return 'done';
    const body = JSON.stringify({ answers: line.map(({ answer }) => answer) });
    const results = await json(
      fetch('/api/answers', { method: 'POST', headers: { 'content-type': 'application/json' }, body }),
      answerResults,
    );
    if (!results) return 'offline';
    // Kept, there already, or refused for good: none of them needs sending again. A refused one stays on this device.
    await local.arrived(line.slice(0, results.results.length).map(({ key }) => key));
  }
}

async function fetchNew(
  local: Local,
  fetch: Fetch,
  takeIn: (answers: readonly AnswerRecord[]) => void,
): Promise<SyncResult> {
  for (;;) {
    const { history, last } = (await local.value('fetched')) ?? { history: null, last: 0 };
    const page = await json(fetch(`/api/answers?after=${last}&limit=${MOST_ANSWERS}`), answerPage);
    if (!page) return 'offline';
    if (page.history !== history && history !== null) {
      await local.setValue('fetched', { history: page.history, last: 0 });
      await local.sendAllAgain();
      const sent = await send(local, fetch);
      if (sent !== 'done') return sent;
      continue;
    }
    const answers = page.answers.flatMap((entry) => (entry.kind === 'answer' ? [entry.answer] : []));
    await local.takeIn(answers);
    if (answers.length > 0) takeIn(answers);
    const reached = page.answers.at(-1)?.number ?? last;
    await local.setValue('fetched', { history: page.history, last: reached });
    if (reached >= page.last) return 'done';
  }
}

/** Sends what waits, then fetches what other devices have sent. */
export async function synchronise(
  local: Local,
  fetch: Fetch,
  takeIn: (answers: readonly AnswerRecord[]) => void,
): Promise<SyncResult> {
  const sent = await send(local, fetch);
  return sent === 'done' ? fetchNew(local, fetch, takeIn) : sent;
}
