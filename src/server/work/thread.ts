/** What runs in each worker thread: does one job after the other. */
import type { MessagePort } from 'node:worker_threads';
import { type JobName, jobs } from './jobs.ts';

export interface Order {
  readonly name: JobName;
  readonly input: unknown;
  /** Where it is told that the job has begun: a thread that has just been started needs a while before. */
  readonly port: MessagePort;
}

export default async function work({ name, input, port }: Order): Promise<unknown> {
  port.postMessage('begun');
  try {
    return await (jobs[name] as (input: unknown) => Promise<unknown>)(input);
  } finally {
    port.close();
  }
}
