import { answeringWords, askingWords } from '../../words/core.ts';
import type { Handlers, Reply, Request, RequestName } from './messages.ts';
import { OnOpenPaper } from './on-open-paper.ts';
import { Opened } from './opened.ts';
import { practiceHandlers } from './practice-handlers.ts';

interface Engine {
  readonly held: Opened;
  readonly atOnce: ReturnType<typeof practiceHandlers>;
}

let engine: Promise<Engine> | undefined;
let later: Promise<Handlers> | undefined;

async function started(language: string): Promise<Engine> {
  const held = new Opened(await askingWords(language));
  return { held, atOnce: practiceHandlers(held) };
}

/** The handlers that have a name among them: what practising needs is there, the rest is fetched once. */
async function handlersFor(name: RequestName, language: string): Promise<Handlers> {
  engine ??= started(language);
  const { held, atOnce } = await engine;
  if (name in atOnce) return atOnce as Handlers;
  later ??= Promise.all([import('./later-handlers.ts'), answeringWords(language)]).then(
    ([{ laterHandlers }, words]) => ({ ...atOnce, ...laterHandlers(held, words) }),
  );
  return later;
}

/** Undefined where the part of the engine that has the handler could not be fetched. */
async function handlers(name: RequestName, language: string): Promise<Handlers | undefined> {
  try {
    return await handlersFor(name, language);
  } catch {
    engine = undefined;
    later = undefined;
    return undefined;
  }
}

async function answer<K extends RequestName>({ number, name, take, language }: Request<K>): Promise<Reply> {
  const found = await handlers(name, language);
  if (!found) return { number, ok: false, missing: true };
  try {
    return { number, ok: true, give: await found[name](take) };
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
