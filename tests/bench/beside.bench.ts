/**
 * How long learners wait for their saves to be acknowledged while something large is made for somebody else, and for anything at
 * all while somebody sends what takes long to mark. One compiled server on SQLite, the load beside it on the same machine.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { Agent, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import Database from 'better-sqlite3';
import type { Desk } from '../../src/server/homework/desk.ts';
import { saveAnswers, submitPaper } from '../../src/server/homework/learner.ts';
import { settlePaper } from '../../src/server/homework/settle.ts';
import { openSqliteStore, storeFile } from '../../src/store/index.ts';
import { hostileAnswers } from '../attacks/hostile-answers.ts';
import { askingHealth } from './asking-health.ts';
import {
  type Class,
  classOf,
  deskOn,
  issued,
  learning,
  post,
  quantile,
  type Ready,
  readyOf,
  type Timed,
} from './homework-load.ts';
import type { Row } from './row.ts';
import { served } from './served.ts';

const LEARNERS = 300;
/** Learners with papers of their own; those of the others are copies. */
const REAL = 40;
/** Saves a second. */
const RATE = 20;
const BOUND = 100;

interface Place extends Class {
  readonly set: string;
  readonly next: string;
  readonly marked: string;
  readonly ready: readonly Ready[];
  readonly tutor: string;
}

/** Learners with marked papers of their own; those of the others are copies. */
const MARKED = 20;

/** Papers of some learners that are handed in and marked. */
async function markedPapers(
  desk: Desk,
  set: string,
  learners: readonly string[],
): Promise<readonly string[]> {
  const kept = (await desk.store.homework.set(set))!;
  const papers: string[] = [];
  for (const [at, learner] of learners.entries()) {
    const { paper, bodies } = await readyOf(desk, set, learner);
    const answers = bodies
      .filter((_, item) => (item + at) % 4 > 0)
      .flatMap((body) => JSON.parse(body).answers);
    await saveAnswers(desk, learning(learner), paper, { answers });
    await submitPaper(desk, learning(learner), paper);
    await settlePaper(desk, kept, paper);
    papers.push(paper);
  }
  return papers;
}

/** Gives others copies of papers. */
function copyPapers(
  file: string,
  papers: readonly string[],
  learners: readonly string[],
  name: string,
): void {
  const database = new Database(file);
  const columns = (database.pragma('table_info(papers)') as { name: string }[])
    .map((column) => `"${column.name}"`)
    .filter((column) => !['"id"', '"code"', '"learner"'].includes(column))
    .join(', ');
  const copy = database.prepare(
    `insert into papers (id, code, learner, ${columns}) select ?, ?, ?, ${columns} from papers where id = ?`,
  );
  database.transaction(() => {
    learners.forEach((learner, at) => {
      copy.run(`${name}-${at}`, `${name}-${at}`, learner, papers[at % papers.length]!);
    });
  })();
  database.close();
}

/** A class with an open set, of which everybody has a paper, one of which all are marked, and one of which nobody has. */
async function fill(folder: string): Promise<Place> {
  const file = storeFile(folder);
  const store = await openSqliteStore(file);
  const desk = deskOn(store);
  const made = await classOf(store, LEARNERS);
  const set = await issued(desk, made.id);
  const next = await issued(desk, made.id);
  const marked = await issued(desk, made.id);
  const papers = await markedPapers(desk, marked, made.learners.slice(0, MARKED));
  const ready: Ready[] = [];
  for (const learner of made.learners.slice(0, REAL)) ready.push(await readyOf(desk, set, learner));
  const admin = (await store.people.persons.make({ name: 'Ada Office', role: 'admin' }))!;
  const tutor = `polewise_session=${await store.people.sessions.begin(admin.id, 'bench')}`;
  await store.close();
  const others = made.learners.slice(REAL);
  copyPapers(
    file,
    ready.map(({ paper }) => paper),
    others,
    'copy',
  );
  copyPapers(file, papers, made.learners.slice(MARKED), 'marked');
  return { ...made, set, next, marked, ready, tutor };
}

interface Got {
  readonly status: number;
  readonly bytes: number;
  readonly ms: number;
}

function get(address: URL, path: string, cookie: string, method = 'GET'): Promise<Got> {
  const begun = performance.now();
  return new Promise((resolve, reject) => {
    const sent = request({ host: address.hostname, port: address.port, path, method, headers: { cookie } });
    sent.on('response', (reply) => {
      let bytes = 0;
      reply.on('data', (piece: Buffer) => {
        bytes += piece.length;
      });
      reply.on('end', () => resolve({ status: reply.statusCode ?? 0, bytes, ms: performance.now() - begun }));
      reply.on('error', reject);
    });
    sent.on('error', reject);
    sent.end();
  });
}

/** Does something again and again at its rate, until that work has ended; how long each took from when it was due. */
async function meanwhile<T>(
  rate: number,
  each: (at: number) => Promise<Timed>,
  work: () => Promise<T>,
): Promise<{ readonly value: T; readonly times: readonly Timed[]; readonly ms: number }> {
  const begun = performance.now();
  const times: Timed[] = [];
  const asked: Promise<unknown>[] = [];
  let ended = false;
  const worked = work().finally(() => {
    ended = true;
  });
  for (let at = 0; !ended || at < 2 * rate; at++) {
    const due = begun + (at * 1000) / rate;
    await new Promise((go) => setTimeout(go, Math.max(0, due - performance.now())));
    asked.push(
      each(at).then(({ status }) => times.push({ status, ms: performance.now() - Math.max(due, begun) })),
    );
  }
  await Promise.all(asked);
  return { value: await worked, times, ms: performance.now() - begun };
}

const highest = (pid: number): number => {
  const status = readFileSync(`/proc/${pid}/status`, 'utf8');
  return Number(/VmHWM:\s+(\d+)/.exec(status)?.[1]) / 1024;
};

async function beside(folder: string): Promise<readonly Row[]> {
  const place = await fill(folder);
  const server = await served(['--class', '--data', folder]);
  const address = new URL(server.address);
  const agent = new Agent({ keepAlive: true, maxSockets: 64 });
  const save = (at: number): Promise<Timed> => {
    const { cookie, paper, bodies } = place.ready[at % REAL]!;
    const body = bodies[at % bodies.length]!.replace('"a-', `"${at}-`);
    return post(address, agent, `/api/papers/${paper}/answers`, cookie, body);
  };
  const rows: Row[] = [];
  const file = (path: string) => async (): Promise<string> => {
    const { status, bytes, ms } = await get(address, path, place.tutor);
    if (status !== 200) throw new Error(`${path}: ${status}`);
    return `${(bytes / 1e6).toFixed(1)} MB in ${(ms / 1000).toFixed(1)} s`;
  };
  const make = async (): Promise<string> => {
    let made = '';
    for (const until = performance.now() + 20_000; performance.now() < until; ) {
      const agent = new Agent();
      const { status } = await post(address, agent, `/api/homework/${place.next}/prepare`, place.tutor, '');
      if (status !== 200) throw new Error(`prepare: ${status}`);
      made = 'for 20 s';
    }
    return made;
  };
  const handIn = async (): Promise<string> => {
    for (const { cookie, paper } of place.ready.slice(0, REAL / 2))
      await post(address, agent, `/api/papers/${paper}/submit`, cookie, '');
    await get(address, `/api/homework/${place.set}/report`, place.tutor);
    return `${REAL / 2} papers`;
  };
  const works: readonly (readonly [string, () => Promise<string>])[] = [
    ['nothing else', async () => new Promise((go) => setTimeout(() => go('for 10 s'), 10_000))],
    [`${LEARNERS} papers of 20 items as PDF`, file(`/api/homework/${place.set}/papers.pdf?zone=UTC`)],
    [`the key to ${LEARNERS} papers as PDF`, file(`/api/homework/${place.set}/key.pdf`)],
    ['papers being made', make],
    ['a package for another system', file(`/api/homework/${place.set}/package-3.0.zip`)],
    ['papers being handed in and marked', handIn],
    [`marks of ${LEARNERS} papers of 20 items as a table`, file(`/api/homework/${place.marked}/marks.csv`)],
    [`the same as statements`, file(`/api/homework/${place.marked}/statements.json`)],
  ];
  for (const [what, work] of works) {
    const { value, times } = await meanwhile(RATE, save, work);
    const good = times.filter(({ status }) => status === 200 || status === 409).map(({ ms }) => ms);
    const name = `beside ${what} (${value}): saving`;
    rows.push(
      { name: `${name}, 99th percentile`, value: quantile(good, 0.99), unit: 'ms', bound: BOUND },
      { name: `${name}, longest of ${times.length}`, value: Math.max(...good), unit: 'ms' },
    );
    rows.push({
      name: `${name}: memory of the server so far`,
      value: highest(server.child.pid!),
      unit: 'MB',
      bound: 500,
    });
    if (good.length < times.length)
      rows.push({ name: `${name}, failed`, value: times.length - good.length, unit: 'requests', bound: 0 });
  }
  const [{ cookie }] = [place.ready[0]!];
  for (const [what, bodies] of Object.entries(hostileAnswers(place.learners[0]!))) {
    const begun = performance.now();
    const asked = await askingHealth(server.address, () =>
      // What is too large is refused, and hung up on, before it has all been sent.
      Promise.allSettled(bodies.map((body) => post(address, agent, '/api/answers', cookie, body))),
    );
    const took = `${((performance.now() - begun) / 1000).toFixed(1)} s`;
    rows.push({
      name: `beside hostile answers, ${what} (${took}): health, longest of ${asked.length}`,
      value: Math.max(...asked),
      unit: 'ms',
      bound: BOUND,
    });
  }
  rows.push({
    name: 'memory of the server, highest',
    value: highest(server.child.pid!),
    unit: 'MB',
    bound: 500,
  });
  agent.destroy();
  await server.end('SIGTERM');
  return rows;
}

export async function bench(): Promise<readonly Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'polewise-bench-'));
  try {
    return await beside(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
