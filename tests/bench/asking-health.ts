/**
 * How long `/api/health` takes while something else is sent, asked from a program of its own: one that also sends megabytes would
 * measure how long it keeps itself waiting.
 */
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { get } from 'node:http';
import { performance } from 'node:perf_hooks';
import { fileURLToPath } from 'node:url';

/** Requests a second. */
const RATE = 50;
/** Seconds for which it is asked at least. */
const LEAST = 2;

const here = fileURLToPath(import.meta.url);

/** Milliseconds that each request took, from when it was due. */
export async function askingHealth(
  address: string,
  work: () => Promise<unknown>,
): Promise<readonly number[]> {
  const asker = fork(here, [address], { execArgv: ['--import', 'tsx'] });
  await once(asker, 'message');
  await work();
  asker.send('ended');
  const [times] = (await once(asker, 'message')) as [readonly number[]];
  asker.disconnect();
  return times;
}

const asked = (address: string): Promise<void> =>
  new Promise((resolve, reject) => {
    get(`${address}/api/health`, (reply) => {
      reply.resume();
      reply.on('end', resolve);
    }).on('error', reject);
  });

if (process.argv[1] === here && process.send) {
  const address = process.argv[2]!;
  let ended = false;
  process.on('message', () => {
    ended = true;
  });
  await asked(address);
  process.send('ready');
  const begun = performance.now();
  const times: Promise<number>[] = [];
  for (let at = 0; !ended || at < LEAST * RATE; at++) {
    const due = begun + (at * 1000) / RATE;
    await new Promise((go) => setTimeout(go, Math.max(0, due - performance.now())));
    times.push(asked(address).then(() => performance.now() - due));
  }
  process.send(await Promise.all(times));
}
