import { Readable } from 'node:stream';
import type { FastifyInstance } from 'fastify';
import { apiRoutes } from '../../../shared/api.ts';
import { addRoute } from '../add-route.ts';
import { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';

/** The pieces as a stream. The first one is fetched here, so that a database that fails still gets a proper reply. */
async function streamOf(pieces: AsyncIterable<string>): Promise<Readable> {
  const source = pieces[Symbol.asyncIterator]();
  const first = await source.next();
  return Readable.from(
    (async function* () {
      if (!first.done) yield first.value;
      for (let next = await source.next(); !next.done; next = await source.next()) yield next.value;
    })(),
  );
}

/** What a learner has: recall states, settings, the export, and the end of it all. */
export function addLearner(app: FastifyInstance, { store, learnerOf }: Service): void {
  addRoute(app, apiRoutes.recalls, async ({ request }) => ({
    recalls: Object.fromEntries(await store.recallsOf(learnerOf(request))),
  }));
  addRoute(app, apiRoutes.settings, ({ request }) => store.settingsOf(learnerOf(request)));
  addRoute(app, apiRoutes.putSettings, ({ body, request }) => store.putSettings(learnerOf(request), body), {
    bodyLimit: 128 * 1024,
  });
  addRoute(app, apiRoutes.exportLearner, async ({ request, reply }) => {
    const stream = await streamOf(store.exportOf(learnerOf(request)));
    return reply
      .type('application/json; charset=utf-8')
      .header('content-disposition', 'attachment; filename="polewise-export.json"')
      .send(stream);
  });
  addRoute(app, apiRoutes.eraseLearner, ({ query, request }) => {
    const learner = learnerOf(request);
    if (query.confirm !== learner)
      throw new ApiFailure(
        'not-confirmed',
        'Erasing was not confirmed.',
        `Everything would be gone for good. Name the learner once more: ?confirm=${learner}`,
      );
    return store.erase(learner);
  });
}
