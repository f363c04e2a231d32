/**
 * Homework under load: a class that hands in within one minute over HTTP, and reports through the store. Papers have real
 * sizes; those of a term are copies of some that were made.
 */

import { mkdtempSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import Database from 'better-sqlite3';
import { homeworkWish } from '../../shared/homework-views.ts';
import { courseOf } from '../../src/practice/index.ts';
import { rightAnswer } from '../../src/questions/index.ts';
import type { Desk } from '../../src/server/homework/desk.ts';
import { beginPaper, saveAnswers, submitPaper } from '../../src/server/homework/learner.ts';
import { paperOf } from '../../src/server/homework/make-papers.ts';
import { setReport } from '../../src/server/homework/reports/set-report.ts';
import { termOf } from '../../src/server/homework/reports/term.ts';
import { draftSet, issueSet } from '../../src/server/homework/sets.ts';
import { settlePaper } from '../../src/server/homework/settle.ts';
import { openSqliteStore, type Store, storeFile } from '../../src/store/index.ts';
import { english } from '../../src/words/en/core.ts';
import { ownBank } from '../support/own-bank.ts';
import { median, type Row } from './row.ts';
import { served } from './served.ts';

const LEARNERS = 300;
const SETS = 20;
const MINUTE = 60_000;

export const TUTOR = { id: 'the-tutor', role: 'admin', session: null } as const;
export const learning = (id: string) => ({ id, role: 'learner', session: null }) as const;

export const course = (() => {
  const made = courseOf(ownBank());
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
})();

export const deskOn = (store: Store): Desk => ({ store, course, words: english, now: Date.now });

export interface Class {
  readonly id: string;
  readonly learners: readonly string[];
}

export async function classOf(store: Store, size: number): Promise<Class> {
  const { people } = store;
  const { id, joiningCode } = await people.classes.make('Packers', null, null);
  const learners: string[] = [];
  for (let at = 0; at < size; at++) {
    const made = await people.persons.make({ name: `Learner ${at + 1}`, role: 'learner' });
    await people.joining.asKnown(joiningCode.replace('-', ''), made!.id);
    learners.push(made!.id);
  }
  return { id, learners };
}

export async function issued(desk: Desk, classId: string): Promise<string> {
  const wish = homeworkWish.parse({
    title: 'A set of twenty',
    topics: ['make-and-break', 'changeover-pole', 'relay-chains', 'two-isolated-supplies'],
    items: 20,
    opensAt: Date.now() - MINUTE,
    closesAt: Date.now() + 60 * MINUTE,
    review: 'after-submitting',
  });
  const { set } = await draftSet(desk, TUTOR, classId, wish);
  await issueSet(desk, TUTOR, set.id);
  return set.id;
}

export interface Ready {
  readonly cookie: string;
  readonly paper: string;
  readonly bodies: readonly string[];
}

/** A learner with a paper that was begun, and what he is going to save. */
export async function readyOf(desk: Desk, set: string, learner: string): Promise<Ready> {
  const { id } = await beginPaper(desk, learning(learner), set);
  const { paper } = (await desk.store.homework.paper(id))!;
  const token = await desk.store.people.sessions.begin(learner, 'bench');
  return {
    cookie: `polewise_session=${token}`,
    paper: id,
    bodies: paper.items.map(({ question }, item) =>
      JSON.stringify({ answers: [{ id: `a-${item}`, item, answer: rightAnswer(question) }] }),
    ),
  };
}

export interface Timed {
  readonly status: number;
  readonly ms: number;
}

export function post(address: URL, agent: Agent, path: string, cookie: string, body: string): Promise<Timed> {
  const begun = performance.now();
  return new Promise((resolve, reject) => {
    const sent = request(
      {
        host: address.hostname,
        port: address.port,
        path,
        method: 'POST',
        agent,
        headers: {
          cookie,
          ...(body === ''
            ? {}
            : { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) }),
        },
      },
      (reply) => {
        reply.resume();
        reply.on('end', () => resolve({ status: reply.statusCode ?? 0, ms: performance.now() - begun }));
      },
    );
    sent.on('error', reject);
    sent.end(body);
  });
}

/** Every learner saves his last answers and hands in, at a moment of his own within the minute. */
async function handIn(address: URL, ready: readonly Ready[]): Promise<{ saves: Timed[]; submits: Timed[] }> {
  const agent = new Agent({ keepAlive: true, maxSockets: LEARNERS });
  const saves: Timed[] = [];
  const submits: Timed[] = [];
  await Promise.all(
    ready.map(async ({ cookie, paper, bodies }, at) => {
      await new Promise((go) => setTimeout(go, (at / ready.length) * MINUTE));
      for (const body of bodies.slice(-3))
        saves.push(await post(address, agent, `/api/papers/${paper}/answers`, cookie, body));
      submits.push(await post(address, agent, `/api/papers/${paper}/submit`, cookie, ''));
    }),
  );
  agent.destroy();
  return { saves, submits };
}

export const quantile = (values: readonly number[], share: number): number => {
  const sorted = values.toSorted((one, other) => one - other);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;
};

async function underLoad(folder: string): Promise<readonly Row[]> {
  const store = await openSqliteStore(storeFile(folder));
  const desk = deskOn(store);
  const { id, learners } = await classOf(store, LEARNERS);
  const set = await issued(desk, id);
  const ready: Ready[] = [];
  for (const learner of learners) {
    const one = await readyOf(desk, set, learner);
    const answers = one.bodies.slice(0, -3).flatMap((body) => JSON.parse(body).answers);
    await saveAnswers(desk, learning(learner), one.paper, { answers });
    ready.push(one);
  }
  await store.close();
  const server = await served(['--class', '--data', folder]);
  const { saves, submits } = await handIn(new URL(server.address), ready);
  await server.end('SIGTERM');
  const failed = [...saves, ...submits].filter(({ status }) => status !== 200).length;
  const times = submits.map(({ ms }) => ms);
  const name = `homework: ${LEARNERS} learners of 20 items hand in within one minute, SQLite`;
  return [
    { name: `${name}: refused or failed`, value: failed, unit: 'requests', bound: 0 },
    { name: `${name}: median`, value: quantile(times, 0.5), unit: 'ms' },
    { name: `${name}: 99th percentile`, value: quantile(times, 0.99), unit: 'ms', bound: 200 },
    {
      name: `${name}: saving meanwhile, 99th percentile`,
      value: quantile(
        saves.map(({ ms }) => ms),
        0.99,
      ),
      unit: 'ms',
    },
  ];
}

/** A term of sets with everybody's marked papers, of which a few are real and the others their copies. */
async function fillTerm(folder: string): Promise<Class & { readonly sets: readonly string[] }> {
  const file = storeFile(folder);
  const store = await openSqliteStore(file);
  const desk = deskOn(store);
  const { id, learners } = await classOf(store, LEARNERS);
  const first = await issued(desk, id);
  const kept = (await store.homework.set(first))!;
  const sets = [first];
  while (sets.length < SETS) {
    const set = { ...kept.set, id: `${first}-${sets.length}` };
    await store.homework.draft({ ...kept, set });
    await store.homework.issue(set.id);
    sets.push(set.id);
  }
  const real = learners.slice(0, 20);
  for (const [at, learner] of real.entries()) {
    const head = await paperOf(desk, kept, learner, 1);
    const { bodies } = await readyOf(desk, first, learner);
    const answers = bodies
      .filter((_, item) => (item + at) % 4 > 0)
      .flatMap((body) => JSON.parse(body).answers);
    await saveAnswers(desk, learning(learner), head.id, { answers });
    await submitPaper(desk, learning(learner), head.id);
    await settlePaper(desk, kept, head.id);
  }
  await store.close();
  const database = new Database(file);
  database.pragma('synchronous = OFF');
  const columns = (database.pragma('table_info(papers)') as { name: string }[])
    .map(({ name }) => `"${name}"`)
    .filter((name) => !['"id"', '"code"', '"set"', '"learner"'].includes(name))
    .join(', ');
  const copy = database.prepare(
    `insert or ignore into papers (id, code, "set", learner, ${columns})
      select ?, ?, ?, ?, ${columns} from papers where "set" = '${first}' and learner = ?`,
  );
  const all = database.transaction(() => {
    for (const [at, set] of sets.entries())
      for (const [number, learner] of learners.entries())
        copy.run(`p-${at}-${number}`, `c-${at}-${number}`, set, learner, real[(number + at) % real.length]);
  });
  all();
  database.close();
  return { id, learners, sets };
}

async function reports(folder: string): Promise<readonly Row[]> {
  const { id, sets } = await fillTerm(folder);
  const store = await openSqliteStore(storeFile(folder));
  const desk = deskOn(store);
  const rows: Row[] = [];
  const measure = async (what: string, work: () => Promise<unknown>): Promise<void> => {
    const [wall, processor]: [number[], number[]] = [[], []];
    for (let run = 0; run < 9; run++) {
      const [begun, used] = [performance.now(), process.cpuUsage()];
      await work();
      wall.push(performance.now() - begun);
      const { user, system } = process.cpuUsage(used);
      processor.push((user + system) / 1000);
    }
    const name = `homework: report over ${LEARNERS} learners and ${what}, through the store`;
    rows.push(
      { name, value: median(wall), unit: 'ms', bound: 200 },
      { name: `${name}: processor time`, value: median(processor), unit: 'ms' },
    );
  };
  await measure(`${SETS} sets`, async () => {
    const { report, waiting } = await termOf(desk, TUTOR, id);
    if (waiting > 0 || report.rows.some(({ bySet }) => bySet.includes(null))) throw new Error('not whole');
  });
  await measure(`one of ${SETS} sets`, () => setReport(desk, TUTOR, sets[7]!));
  await store.close();
  return rows;
}

export async function loadBench(): Promise<readonly Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'polewise-bench-'));
  try {
    return [...(await reports(join(folder, 'term'))), ...(await underLoad(join(folder, 'load')))];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
