/** What runs in each worker thread: does one job after the other. */
import { once } from 'node:events';
import type { MessagePort } from 'node:worker_threads';
import { coreWords } from '../../words/core.ts';
import { type JobName, jobs, type Talk } from './jobs.ts';

export interface Order {
  readonly name: JobName;
  readonly input: unknown;
  /** Where the job talks while it runs. */
  readonly port: MessagePort;
}

/** What a thread says: that a job has begun (one just started needs a while before), and what `Talk` is for. */
export type Said =
  | { readonly kind: 'begun' }
  | { readonly kind: 'next' }
  | { readonly kind: 'give'; readonly piece: Uint8Array };

const talkOver = (port: MessagePort): Talk => {
  const ask = async (said: Said): Promise<unknown> => {
    const answered = once(port, 'message');
    port.postMessage(said);
    return (await answered)[0];
  };
  return {
    next: async <T>() => (await ask({ kind: 'next' })) as T | undefined,
    give: async (piece) => {
      await ask({ kind: 'give', piece });
    },
  };
};

export default async function work({ name, input, port }: Order): Promise<unknown> {
  // A thread that speaks for the first time fetches its words before the job begins, and not at the job's expense.
  const { language } = input as { readonly language?: string };
  if (language !== undefined) await coreWords(language);
  port.postMessage({ kind: 'begun' } satisfies Said);
  try {
    return await (jobs[name] as (input: unknown, talk: Talk) => Promise<unknown>)(input, talkOver(port));
  } finally {
    port.close();
  }
}
