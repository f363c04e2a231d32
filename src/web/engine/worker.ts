import { answeringWords, askingWords } from '../../words/core.ts';
import type { Handlers, Prepared, Reply, Request, RequestName, Requests } from './messages.ts';
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

/**
 * What draws a meter is fetched when a question first has one; its picture is made again then. Undefined where nothing has to be, or
 * can't: the question says in words where the meter is.
 */
async function withMeter(give: unknown, take: unknown): Promise<unknown> {
  const { held, atOnce } = await engine!;
  const prepared = give as Partial<Prepared> | null;
  if (held.meterAt || prepared?.asked?.form !== 'reading' || !prepared.task) return undefined;
  try {
    held.meterAt = (await import('./meter-place.ts')).meterAt;
  } catch {
    return undefined;
  }
  return atOnce.show({ task: prepared.task, view: (take as Requests['show']['take']).view });
}

async function answer<K extends RequestName>({ number, name, take, language }: Request<K>): Promise<Reply> {
  const found = await handlers(name, language);
  if (!found) return { number, ok: false, missing: true };
  try {
    const give = found[name](take);
    return { number, ok: true, give: (await withMeter(give, take)) ?? give };
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
