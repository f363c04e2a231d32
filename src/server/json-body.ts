import type { FastifyInstance, FastifyRequest } from 'fastify';
import { ApiFailure } from './problems.ts';
import { others } from './turns.ts';

/** Bodies above this are read one at a time, with a turn for others in between. */
const LARGE = 32 * 1024;
/** How many values one body may have, by its commas and brackets: some 15 ms of reading. */
const MOST_VALUES = 150_000;

const [COMMA, BRACE, BRACKET] = [',', '{', '['].map((letter) => letter.charCodeAt(0));

/**
 * Whether a text has more values than may be read. Reading JSON takes as long for a few letters of a list of small things as for
 * a page of text, so the number of bytes alone says little. Commas in texts are counted too; there are few.
 */
function hasTooMany(body: Buffer): boolean {
  let values = 0;
  for (const letter of body) if (letter === COMMA || letter === BRACE || letter === BRACKET) values++;
  return values > MOST_VALUES;
}

/** Reads the bodies of requests as JSON, so that however many come at once, nobody else waits for more than one of them. */
export function addJsonBodies(app: FastifyInstance): void {
  const read = app.getDefaultJsonParser('error', 'error') as (
    request: FastifyRequest,
    body: string,
    done: (error: Error | null, value?: unknown) => void,
  ) => void;
  let last: Promise<void> = Promise.resolve();
  const turn = (): Promise<void> => {
    last = last.then(others);
    return last;
  };
  app.removeContentTypeParser('application/json');
  const parsed = async (request: FastifyRequest, body: Buffer): Promise<unknown> => {
    if (body.length > LARGE) {
      await turn();
      if (hasTooMany(body))
        throw new ApiFailure(
          'body-too-large',
          `The body has more than ${MOST_VALUES} values.`,
          'Send fewer answers at a time.',
        );
    }
    return new Promise((resolve, reject) => {
      read(request, body.toString('utf8'), (error, value) => (error ? reject(error) : resolve(value)));
    });
  };
  app.addContentTypeParser('application/json', { parseAs: 'buffer' }, parsed);
}
