import { makeHandlers } from './handlers.ts';
import type { Reply, Request, RequestName } from './messages.ts';

const handlers = makeHandlers();

function answer<K extends RequestName>({ number, name, take }: Request<K>): Reply {
  try {
    return { number, ok: true, give: handlers[name](take) };
  } catch (error) {
    return { number, ok: false, message: error instanceof Error ? error.message : String(error) };
  }
}

addEventListener('message', ({ data }: MessageEvent<Request>) => {
  postMessage(answer(data));
});
