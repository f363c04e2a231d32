/**
 * How long `/api/health` takes while something else is sent, asked from a thread of its own: one that also sends megabytes would
 * measure how long it keeps itself waiting.
 */
import { once } from 'node:events';
import { get } from 'node:http';
import { performance } from 'node:perf_hooks';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';

/** Requests a second. */
const RATE = 50;
/** Seconds for which it is asked at least. */
const LEAST = 2;

/** Milliseconds that each request took, from when it was due. */
export async function askingHealth(
  address: string,
  work: () => Promise<unknown>,
): Promise<readonly number[]> {
  const worker = new Worker(new URL(import.meta.url), { workerData: address, execArgv: ['--import', 'tsx'] });
  await once(worker, 'message');
  await work();
  worker.postMessage('ended');
  const [times] = (await once(worker, 'message')) as [readonly number[]];
  await worker.terminate();
  return times;
}

const asked = (address: string): Promise<void> =>
  new Promise((resolve, reject) => {
    get(`${address}/api/health`, (reply) => {
      reply.resume();
      reply.on('end', resolve);
    }).on('error', reject);
  });

if (!isMainThread && parentPort) {
  const port = parentPort;
  let ended = false;
  port.on('message', () => {
    ended = true;
  });
  await asked(workerData);
  port.postMessage('ready');
  const begun = performance.now();
  const times: Promise<number>[] = [];
  for (let at = 0; !ended || at < LEAST * RATE; at++) {
    const due = begun + (at * 1000) / RATE;
    await new Promise((go) => setTimeout(go, Math.max(0, due - performance.now())));
    times.push(asked(workerData).then(() => performance.now() - due));
  }
  port.postMessage(await Promise.all(times));
}
