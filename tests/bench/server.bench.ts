/**
 * What the server carries: answers a second with the disk made sure of, how long each waits, how soon it is ready, and
 * what the page's queries take with many learners' histories beside.
 *
 * `--full` (or POLEWISE_BENCH=full) measures the queries beside 10,000 learners with 500 answers each, which takes some
 * 25 GB of disk and minutes to make; otherwise beside 100 learners, which the name of the row says.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import Database from 'better-sqlite3';
import { openSqliteStore, type Store, storeFile } from '../../src/store/index.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import type { Row } from './row.ts';
import { readyToServe, served } from './served.ts';

const full = process.argv.includes('--full') || process.env['POLEWISE_BENCH'] === 'full';

const SKILLS = 60;
const bodyOf = (number: number): string =>
  JSON.stringify({
    answers: [
      answerWith({
        id: `answer-${number}`,
        at: MORNING + number,
        skill: `skill-${number % SKILLS}`,
        circuit: `c-${number}`,
      }),
    ],
  });

/** Value at a share of a sorted list. */
const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;

/** One answer sent and acknowledged. */
function post(address: URL, agent: Agent, body: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) };
    const sending = request(
      { host: address.hostname, port: address.port, path: '/api/answers', method: 'POST', agent, headers },
      (reply) => {
        let text = '';
        reply.setEncoding('utf8').on('data', (piece: string) => {
          text += piece;
        });
        reply.on('end', () =>
          text.includes('"kept"') ? resolve() : reject(new Error(`not kept: ${reply.statusCode} ${text}`)),
        );
      },
    );
    sending.on('error', reject);
    sending.end(body);
  });
}

let sent = 0;

/** As fast as replies come, over a number of connections. */
async function asFastAsPossible(address: URL, connections: number, seconds: number): Promise<number> {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  const until = performance.now() + seconds * 1000;
  const begun = performance.now();
  let count = 0;
  await Promise.all(
    Array.from({ length: connections }, async () => {
      while (performance.now() < until) {
        await post(address, agent, bodyOf(sent++));
        count++;
      }
    }),
  );
  agent.destroy();
  return (count * 1000) / (performance.now() - begun);
}

/** At a steady rate whatever comes back: each reply's time counts from when its answer was due to be sent. */
async function atRate(address: URL, rate: number, seconds: number): Promise<readonly number[]> {
  const agent = new Agent({ keepAlive: true, maxSockets: 64 });
  const bodies = Array.from({ length: rate * seconds }, () => bodyOf(sent++));
  const times: number[] = [];
  const begun = performance.now();
  const waiting: Promise<void>[] = [];
  for (let next = 0; next < bodies.length; ) {
    const due = Math.floor(((performance.now() - begun) / 1000) * rate);
    for (; next <= due && next < bodies.length; next++) {
      const planned = begun + (next * 1000) / rate;
      waiting.push(
        post(address, agent, bodies[next]!).then(() => {
          times.push(performance.now() - planned);
        }),
      );
    }
    await new Promise((go) => setTimeout(go, 1));
  }
  await Promise.all(waiting);
  agent.destroy();
  return times.toSorted((one, other) => one - other);
}

async function underLoad(folder: string): Promise<readonly Row[]> {
  await readyToServe();
  const begun = performance.now();
  const server = await served(['--data', folder]);
  const ready = performance.now() - begun;
  const address = new URL(server.address);
  await asFastAsPossible(address, 32, 2);
  const speed = await asFastAsPossible(address, 32, 6);
  const times = await atRate(address, 1000, 6);
  await server.end('SIGTERM');
  return [
    { name: 'server: start to ready', value: ready, unit: 'ms', bound: 2000 },
    {
      name: 'server: answers kept, SQLite, 32 connections',
      value: speed,
      unit: 'a second',
      bound: 1000,
      better: 'more',
    },
    { name: 'server: answer at 1,000 a second, median', value: quantile(times, 0.5), unit: 'ms' },
    {
      name: 'server: answer at 1,000 a second, 99th percentile',
      value: quantile(times, 0.99),
      unit: 'ms',
      bound: 50,
    },
  ];
}

/** Fills a store with histories as the store itself writes them, but faster: one is kept properly and copied. */
async function fill(file: string, learners: number, answers: number): Promise<void> {
  const store = await openSqliteStore(file);
  const records = Array.from({ length: answers }, (_, at) =>
    answerWith({
      id: `a${at}`,
      at: MORNING + at * 3_600_000,
      learner: 'learner-0',
      skill: `skill-${at % SKILLS}`,
      circuit: `c-${at}`,
      share: at % 5 === 0 ? 0.5 : 1,
    }),
  );
  await store.keepAnswers(records);
  await store.close();
  const database = new Database(file);
  database.pragma('synchronous = OFF');
  const columns = (table: string, without: string): string =>
    (database.pragma(`table_info(${table})`) as { name: string }[])
      .map(({ name }) => name)
      .filter((name) => name !== without)
      .join(', ');
  const copies = ['histories', 'answers', 'recalls'].map((table) => {
    const rest = columns(table, 'learner');
    return database.prepare(
      `insert into ${table} (learner, ${rest}) select ?, ${rest} from ${table} where learner = 'learner-0'`,
    );
  });
  const copy = database.transaction((from: number, to: number) => {
    for (let at = from; at < to; at++) for (const statement of copies) statement.run(`learner-${at}`);
  });
  for (let from = 1; from < learners; from += 100) copy(from, Math.min(learners, from + 100));
  database.close();
}

/** Milliseconds of something done for many learners, sorted. */
async function timesOf(
  learners: number,
  use: (learner: string, at: number) => Promise<unknown>,
): Promise<readonly number[]> {
  const times: number[] = [];
  for (let at = 0; at < 300; at++) {
    // Steps of a prime number, so that no two learners are neighbours.
    const learner = `learner-${(at * 7919) % learners}`;
    const begun = performance.now();
    await use(learner, at);
    times.push(performance.now() - begun);
  }
  return times.toSorted((one, other) => one - other);
}

async function queries(folder: string): Promise<readonly Row[]> {
  const learners = full ? 10_000 : 100;
  const answers = 500;
  const file = storeFile(folder);
  await fill(file, learners, answers);
  const store: Store = await openSqliteStore(file);
  const beside = `beside ${learners.toLocaleString('en')} learners with ${answers} answers`;
  const pageOf = (after: number, limit: number) => async (learner: string) => {
    const { entries } = await store.entriesAfter(learner, after, limit);
    if (entries.length !== limit) throw new Error('The page is not full.');
    return JSON.stringify(entries);
  };
  const asked: readonly (readonly [string, (learner: string, at: number) => Promise<unknown>])[] = [
    ['recall states', (learner) => store.recallsOf(learner)],
    ['settings', (learner) => store.settingsOf(learner)],
    ['a page of 50 answers', pageOf(400, 50)],
    ['a page of 100 answers, the most', pageOf(350, 100)],
    [
      'keep one answer',
      (learner, at) =>
        store.keepAnswers([
          answerWith({ id: `new-${at}`, at: MORNING + 9e9 + at, learner, skill: `skill-${at % SKILLS}` }),
        ]),
    ],
    [
      'keep one that arrives late',
      (learner, at) =>
        store.keepAnswers([
          answerWith({ id: `late-${at}`, at: MORNING + at, learner, skill: `skill-${at % SKILLS}` }),
        ]),
    ],
  ];
  const rows: Row[] = [];
  for (const [name, use] of asked) {
    const times = await timesOf(learners, use);
    rows.push(
      { name: `store: ${name}, median, ${beside}`, value: quantile(times, 0.5), unit: 'ms', bound: 20 },
      { name: `store: ${name}, 99th percentile, ${beside}`, value: quantile(times, 0.99), unit: 'ms' },
    );
  }
  await store.close();
  return rows;
}

export async function bench(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'polewise-bench-'));
  try {
    return [...(await underLoad(join(folder, 'load'))), ...(await queries(join(folder, 'many')))];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
