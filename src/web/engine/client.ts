import type { Reply, Request, RequestName, Requests } from './messages.ts';

/** The engine, from the page's side. */
export interface Engine {
  call<K extends RequestName>(name: K, take: Requests[K]['take']): Promise<Requests[K]['give']>;
}

/** Starts the engine's worker. A call fails with a message for a person when the engine does. */
export function startEngine(): Engine {
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
    else call?.reject(new Error(data.message));
  });
  worker.addEventListener('error', () => {
    for (const { reject } of waiting.values())
      reject(new Error('The part of the page that works out circuits could not start.'));
    waiting.clear();
  });
  return {
    call: (name, take) =>
      new Promise((resolve, reject) => {
        number += 1;
        waiting.set(number, { resolve, reject });
        worker.postMessage({ number, name, take } satisfies Request);
      }),
  };
}
