import { randomUUID } from 'node:crypto';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { readJson } from '../circuit/index.ts';
import { MOST_IN_ANSWER } from './check-answer.ts';
import { cutJson, type JsonBounds, readPieces } from './json-pieces.ts';
import { ApiFailure } from './problems.ts';
import { inTurns, others } from './turns.ts';

/** Bodies above this are read one at a time and in pieces, with a turn for others in between. */
const LARGE = 16 * 1024;

/**
 * A full batch of large answers; one that is larger than an answer may be is refused by itself, up to this. Nothing that is sent is
 * nested a third as deep.
 */
export const BODY_BOUNDS: JsonBounds = { values: 150_000, inPiece: 2 * MOST_IN_ANSWER.values, deep: 32 };

/** Reads a body at once, and finds where it is no JSON; that there is none, `read` says. */
function readSmall(text: string, read: (text: string) => unknown): unknown {
  if (text === '') return read(text);
  const json = readJson(text, read);
  if (json.ok) return json.value;
  const { found, line, column } = json.mistake;
  throw new ApiFailure(
    found === undefined ? { says: 'bad-json.end' } : { says: 'bad-json.at', found, line, column },
  );
}

/** Reads the bodies of requests as JSON, so that however many come at once, nobody else waits for more than a piece of one. */
export function addJsonBodies(app: FastifyInstance): void {
  const own = app.getDefaultJsonParser('error', 'error') as (
    request: FastifyRequest,
    body: string,
    done: (error: Error | null, value?: unknown) => void,
  ) => void;
  const mark = `piece ${randomUUID()} `;
  let last: Promise<unknown> = Promise.resolve();
  app.removeContentTypeParser('application/json');
  const parsed = (request: FastifyRequest, body: Buffer): unknown => {
    // It calls back before it returns.
    const read = (text: string): unknown => {
      let found: unknown;
      own(request, text, (error, value) => {
        if (error) throw error;
        found = value;
      });
      return found;
    };
    if (body.length <= LARGE) return readSmall(body.toString('utf8'), read);
    function* inPieces(): Generator<undefined, unknown> {
      const cut = yield* cutJson(body, BODY_BOUNDS);
      if (!cut.ok)
        throw new ApiFailure({ says: `body-too-large.${cut.tooMany}`, most: BODY_BOUNDS[cut.tooMany] });
      return yield* readPieces(body, cut.pieces, read, mark);
    }
    const turn = last.then(others).then(() => inTurns(inPieces()));
    last = turn.catch(() => {});
    return turn;
  };
  app.addContentTypeParser(
    'application/json',
    { parseAs: 'buffer' },
    async (request: FastifyRequest, body: Buffer) => parsed(request, body),
  );
}
