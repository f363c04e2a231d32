/** Answers to the server and back: in the order in which they were given, each once by its id, however often it is tried. */

import type { AnswerResult, LinePage } from '../../../shared/api.ts';
import type { AnswerLine } from '../../../shared/practice.ts';
import type { Settings } from '../../../shared/settings.ts';
import { readLoosely } from '../loosely.ts';
import { isFromNewer } from '../renewed.ts';
import type { Ahead, Local } from './database.ts';
import {
  arrived,
  firstMissing,
  inLine,
  knownHistory,
  reach,
  reached,
  sameLines,
  sendAllAgain,
  takeIn,
  takeLines,
} from './exchange.ts';
import { exchangeSettings } from './exchange-settings.ts';
import { type Sent, sendLine } from './line.ts';
import { checks, type Fetch, json, type SyncResult, sending } from './reply.ts';

export type { Fetch, SyncResult } from './reply.ts';

/** What is on its way: the answers in short, that screens show, or whole. */
export interface Coming {
  readonly what: 'lines' | 'answers';
  /** How much of it is here. */
  readonly here: number;
  readonly all: number;
}

/** What the page is told of what came from elsewhere. */
export interface Arrivals {
  /** How the learner stands, while the answers it follows from are on their way; null from when they are here. */
  ahead(states: Ahead | null): void;
  /** New here, or counted otherwise than before. */
  lines(fresh: readonly AnswerLine[]): void;
  /** These are all that there are now: the server has another history, or another tab was told of more. */
  anew(all: readonly AnswerLine[]): void;
  /** Told where it takes more than one page. */
  coming(how: Coming): void;
  settings(newer: Settings): void;
}

/** Answers sent in one request: small enough for a slow line. */
const BATCH = 50;
/** Answers fetched in one, in short and whole. */
const LINES = 1000;
const PAGE = 100;

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

/** Sends what waits; a refusal is the server's own, and of an answer for its form only where it is no newer one than this page. */
const send = (local: Local, fetch: Fetch): Promise<SyncResult> =>
  sendLine(
    {
      first: (most) => inLine(local, most),
      async send(some): Promise<Sent<Exclude<SyncResult, 'done'>>> {
        let refused = false;
        let newer = false;
        const body = { answers: some.map(({ answer }) => answer) };
        const asked = fetch('/api/answers', sending('POST', body)).then(async (response) => {
          newer = isFromNewer(response);
          if (response.status >= 400 && response.status < 500) refused = await isRefusal(response.clone());
          return response;
        });
        const said = await json(asked, ({ answerResults }) => answerResults);
        const results = said.value?.results;
        // A newer server may want them in another form, which a newer page would send: none of them is given up.
        if (newer && (refused || results?.some(isMalformed))) return { kind: 'stopped', why: 'too-old' };
        if (refused) return { kind: 'refused', giveUp: () => arrived(local, some) };
        if (!said.value) return { kind: 'stopped', why: said.why };
        // Nothing is said of any of them: asking at once would come to the same, and never end.
        if (said.value.results.length === 0) return { kind: 'stopped', why: 'offline' };
        // Kept, there already, or refused for good: none of them needs sending again. A refused one stays on this device.
        await arrived(local, some.slice(0, said.value.results.length));
        return { kind: 'taken' };
      },
    },
    BATCH,
  );

/** The answers themselves are here, or of another history. */
async function endAhead(local: Local, arrivals: Arrivals): Promise<void> {
  if ((await local.value('ahead')) === undefined) return;
  await local.remove('ahead');
  arrivals.ahead(null);
}

/** Takes over what another tab has fetched, where one has: it is in the store, and this page wasn't told. */
async function takesOver(local: Local, arrivals: Arrivals): Promise<boolean> {
  const [lines, ahead] = await Promise.all([local.value('lines'), local.value('ahead')]);
  if (sameLines(lines, local.told)) return false;
  arrivals.anew(await local.lines());
  arrivals.ahead(ahead ?? null);
  local.told = lines;
  return true;
}

/** Begins again with a history that isn't the one known here: sends it everything that there is. */
async function beginAgain(
  local: Local,
  fetch: Fetch,
  arrivals: Arrivals,
  { history, corrections }: Pick<LinePage, 'history' | 'corrections'>,
): Promise<SyncResult> {
  // First of all: left in the middle of it, the page finds again that the history is another one.
  arrivals.anew(await sendAllAgain(local));
  await reach(local, { history, last: 0, corrections });
  await local.setValue('fetched', { history, last: 0 });
  await endAhead(local, arrivals);
  return send(local, fetch);
}

/** All answers in short, as the server counts them: those from elsewhere, and the ones just sent. */
async function fetchLines(local: Local, fetch: Fetch, arrivals: Arrivals): Promise<SyncResult> {
  for (;;) {
    const { last, corrections } = await reached(local);
    const { history, told } = await knownHistory(local);
    const said = await json(fetch(`/api/lines?after=${last}&limit=${LINES}`), ({ linePage }) => linePage);
    if (!said.value) return said.why;
    // Not before the server can be asked: of a store that was thrown away the page knows more than is in it.
    if (await takesOver(local, arrivals)) continue;
    const page = said.value;
    // Fewer answers than there were: a backup was put back that still goes by the old name.
    const restored = page.history === history && page.last < told;
    if ((page.history !== history && history !== null) || restored) {
      const sent = await beginAgain(local, fetch, arrivals, page);
      if (sent !== 'done') return sent;
      continue;
    }
    if (last > 0 && page.corrections !== corrections) {
      await reach(local, { history: page.history, last: 0, corrections: page.corrections });
      continue;
    }
    await takeLines(local, page.lines);
    arrivals.lines(page.lines);
    const upTo = page.lines.at(-1)?.number ?? last;
    await reach(local, { history: page.history, last: upTo, corrections: page.corrections });
    if (upTo >= page.last || page.lines.length === 0) {
      await endAhead(local, arrivals);
      return 'done';
    }
    arrivals.coming({ what: 'lines', here: upTo, all: page.last });
    // A long history takes its time: what is answered meanwhile doesn't wait for the end of it.
    const sent = await send(local, fetch);
    if (sent !== 'done') return sent;
  }
}

/** Whole answers from elsewhere: nothing here waits for them, but a server that lost them gets them back from every device. */
async function fetchWhole(local: Local, fetch: Fetch, arrivals: Arrivals): Promise<SyncResult> {
  for (;;) {
    const lines = await reached(local);
    const fetched = await local.value('fetched');
    const last = fetched && fetched.history === lines.history ? fetched.last : 0;
    if (last >= lines.last) return 'done';
    const missing = await firstMissing(local, last);
    if (missing === undefined) {
      await local.setValue('fetched', { history: lines.history, last: lines.last });
      return 'done';
    }
    const said = await json(
      fetch(`/api/answers?after=${missing - 1}&limit=${PAGE}`),
      ({ answerPage }) => answerPage,
    );
    if (!said.value) return said.why;
    const { history, answers } = said.value;
    // Another one since: the next exchange begins with its lines.
    if (history !== lines.history || answers.length === 0) return 'done';
    await takeIn(
      local,
      answers.flatMap((entry) => (entry.kind === 'answer' ? [entry.answer] : [])),
    );
    const upTo = answers.at(-1)!.number;
    await local.setValue('fetched', { history, last: upTo });
    if (upTo < lines.last) arrivals.coming({ what: 'answers', here: upTo, all: lines.last });
    const sent = await send(local, fetch);
    if (sent !== 'done') return sent;
  }
}

/** Whether nothing was ever fetched here, and nothing given. */
async function isStrange(local: Local): Promise<boolean> {
  const known = await Promise.all([local.value('lines'), local.value('fetched'), local.value('ahead')]);
  return known.every((value) => value === undefined) && (await local.lines()).length === 0;
}

/**
 * What a right question needs: what was set, and where nothing was ever fetched how the learner stands, in one small reply
 * before the answers that it follows from.
 */
async function fetchFirst(local: Local, fetch: Fetch, arrivals: Arrivals): Promise<SyncResult> {
  const setting = exchangeSettings(local, fetch, arrivals);
  if (!(await isStrange(local))) return setting;
  const [set, said] = await Promise.all([setting, json(fetch('/api/recalls'), ({ recalls }) => recalls)]);
  if (set !== 'done') return set;
  if (!said.value) return said.why;
  if (said.value.last > 0) await local.setValue('ahead', said.value);
  arrivals.ahead(said.value);
  return 'done';
}

/** Milliseconds after which a network that says nothing is as good as none. */
const PATIENCE = 60_000;

/**
 * Sends what waits, then fetches what other devices have set and sent: first what a right question needs, last what takes long.
 * A request that hangs doesn't stop it for good.
 */
export async function synchronise(
  local: Local,
  fetch: Fetch,
  arrivals: Arrivals,
  patience = PATIENCE,
): Promise<SyncResult> {
  const within: Fetch = (path, init) => fetch(path, { ...init, signal: AbortSignal.timeout(patience) });
  for (const part of [send, fetchFirst, fetchLines, fetchWhole]) {
    const result = await part(local, within, arrivals);
    if (result !== 'done') return result;
  }
  return 'done';
}
