import { PageError } from '../page-error.ts';
import { language } from '../words.ts';
import type { Reply, Request, RequestName, Requests } from './messages.ts';

/** The engine, from the page's side. */
export interface Engine {
  call<K extends RequestName>(name: K, take: Requests[K]['take']): Promise<Requests[K]['give']>;
}

/** The engine could, and doesn't: the circuit is on an open paper. */
export class NotTold extends PageError {}

/**
 * Starts the engine's worker. A call fails with a message for a person when the engine does.
 *
 * @param onOpenPaper - told of a circuit that was to be marked or run though it is on an open paper
 */
export function startEngine(onOpenPaper: (circuit: string) => void): Engine {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), {
    type: 'module',
    name: 'polewise-engine',
  });
  const waiting = new Map<number, { resolve: (give: never) => void; reject: (error: Error) => void }>();
  let number = 0;
  worker.addEventListener('message', ({ data }: MessageEvent<Reply>) => {
    const call = waiting.get(data.number);
    waiting.delete(data.number);
    if (data.ok) call?.resolve(data.give as never);
    else if ('missing' in data) call?.reject(new PageError(({ engine }) => engine.partMissing));
    else if (data.onOpenPaper === undefined) call?.reject(new Error(data.message));
    else {
      onOpenPaper(data.onOpenPaper);
      call?.reject(new NotTold(({ engine }) => engine.onOpenPaper));
    }
  });
  worker.addEventListener('error', () => {
    for (const { reject } of waiting.values()) reject(new PageError(({ engine }) => engine.couldNotStart));
    waiting.clear();
  });
  return {
    call: (name, take) =>
      new Promise((resolve, reject) => {
        number += 1;
        waiting.set(number, { resolve, reject });
        worker.postMessage({ number, name, take, language } satisfies Request);
      }),
  };
}
