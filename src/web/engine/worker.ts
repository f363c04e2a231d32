import { OnOpenPaper } from './guarded.ts';
import type { Handlers, Reply, Request, RequestName } from './messages.ts';
import { Opened } from './opened.ts';
import { practiceHandlers } from './practice-handlers.ts';

const held = new Opened();
const atOnce = practiceHandlers(held);
let later: Promise<Handlers> | undefined;

/** The handlers that have a name among them: what practising needs is there, the rest is fetched once. */
async function handlersFor(name: RequestName): Promise<Handlers> {
  if (name in atOnce) return atOnce as Handlers;
  later ??= import('./later-handlers.ts').then(({ laterHandlers }) => ({
    ...atOnce,
    ...laterHandlers(held),
  }));
  try {
    return await later;
  } catch {
    later = undefined;
    throw new Error('This part of the page could not be loaded. Once it has been, it works without network.');
  }
}

async function answer<K extends RequestName>({ number, name, take }: Request<K>): Promise<Reply> {
  try {
    const handlers = await handlersFor(name);
    return { number, ok: true, give: handlers[name](take) };
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return {
      number,
      ok: false,
      message,
      ...(error instanceof OnOpenPaper ? { onOpenPaper: error.circuit } : {}),
    };
  }
}

addEventListener('message', async ({ data }: MessageEvent<Request>) => {
  postMessage(await answer(data));
});
