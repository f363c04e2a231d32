/**
 * A college's morning: 300 people with passwords of their own sign in at the same moment, from one address, at devices that the server
 * doesn't know. Argon2id at the cost in use; one compiled server on SQLite, the requests beside it on the same machine.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { Agent } from 'node:http';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { Passwords, USUAL_COST } from '../../src/server/people/passwords.ts';
import { openSqliteStore, storeFile } from '../../src/store/index.ts';
import { askingHealth } from './asking-health.ts';
import { post, quantile, type Timed } from './homework-load.ts';
import { median, type Row } from './row.ts';
import { served } from './served.ts';

const PEOPLE = 300;

const passwordOf = (at: number): string => `the mill race freezes ${at}`;

async function fill(folder: string): Promise<void> {
  const store = await openSqliteStore(storeFile(folder));
  const passwords = new Passwords();
  for (let at = 0; at < PEOPLE; at++) {
    const passwordHash = await passwords.hash(passwordOf(at));
    await store.people.persons.make({
      name: `Learner ${at}`,
      role: 'learner',
      signIn: `learner.${at}`,
      passwordHash,
    });
  }
  await store.close();
}

/** Milliseconds of one hash with nothing beside it. */
async function oneHash(): Promise<number> {
  const passwords = new Passwords();
  const times: number[] = [];
  for (let run = 0; run < 15; run++) {
    const begun = performance.now();
    await passwords.hash('the mill race freezes');
    times.push(performance.now() - begun);
  }
  return median(times);
}

/** Seconds of processor time that a program has used, in all its threads (proc(5): fields 14 and 15, in ticks of 10 ms). */
function processorSeconds(pid: number): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8')
    .replace(/^.*\) /, '')
    .split(' ');
  return (Number(fields[11]) + Number(fields[12])) / 100;
}

async function signingIn(folder: string): Promise<readonly Row[]> {
  await fill(folder);
  const hash = await oneHash();
  const server = await served(['--class', '--data', folder]);
  const address = new URL(server.address);
  const agent = new Agent({ keepAlive: true, maxSockets: PEOPLE });
  let replies: readonly Timed[] = [];
  const health = await askingHealth(server.address, async () => {
    replies = await Promise.all(
      Array.from({ length: PEOPLE }, (_, at) =>
        post(
          address,
          agent,
          '/api/sign-in',
          '',
          JSON.stringify({ signIn: `learner.${at}`, password: passwordOf(at) }),
        ),
      ),
    );
  });
  agent.destroy();
  const processor = processorSeconds(server.child.pid!);
  await server.end('SIGTERM');
  const times = replies.map(({ ms }) => ms / 1000);
  const { memoryCost, timeCost } = USUAL_COST;
  const name = `${PEOPLE} sign-ins at once (Argon2id, ${memoryCost / 1024} MiB, ${timeCost} passes)`;
  return [
    { name: 'one hash with nothing beside it', value: hash, unit: 'ms' },
    {
      name: `${name}: refused or failed`,
      value: replies.filter(({ status }) => status !== 200).length,
      unit: 'requests',
      bound: 0,
    },
    { name: `${name}: median`, value: median(times), unit: 's' },
    { name: `${name}: 99th percentile`, value: quantile(times, 0.99), unit: 's', bound: 5 },
    { name: `${name}: longest`, value: Math.max(...times), unit: 's' },
    { name: `${name}: processor time of the server, its start too`, value: processor, unit: 's' },
    {
      name: `${name}: health meanwhile, longest of ${health.length}`,
      value: Math.max(...health),
      unit: 'ms',
    },
    {
      name: `load of the machine in the last minute, of ${cpus().length} processors`,
      value: loadavg()[0]!,
      unit: 'running',
    },
  ];
}

export async function bench(): Promise<readonly Row[]> {
  const folder = mkdtempSync(join(tmpdir(), 'polewise-bench-'));
  try {
    return await signingIn(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
