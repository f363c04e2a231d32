import type { FastifyInstance } from 'fastify';
import { apiRoutes } from '../../../shared/api.ts';
import { addRoute } from '../add-route.ts';
import { streamOf } from '../piece-stream.ts';
import { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';

/** What a learner has: recall states, settings, the export, and the end of it all. */
export function addLearner(app: FastifyInstance, service: Service): void {
  const { store, words } = service;
  const whose = service.mode === 'class' ? 'person' : 'anybody';
  addRoute(app, service, apiRoutes.recalls, async ({ person }) => {
    const { history, last, recalls } = await store.standingOf(person.id);
    return { history, last, recalls: Object.fromEntries(recalls) };
  });
  addRoute(app, service, apiRoutes.settings, ({ person }) => store.settingsOf(person.id));
  addRoute(
    app,
    service,
    apiRoutes.putSettings,
    ({ body, person }) => store.putSettings(person.id, body, whose),
    {
      bodyLimit: 128 * 1024,
    },
  );
  addRoute(app, service, apiRoutes.exportLearner, async ({ person, reply }) => {
    const stream = await streamOf(store.exportOf(person.id, words));
    return reply
      .type('application/json; charset=utf-8')
      .header('content-disposition', 'attachment; filename="polewise-export.json"')
      .send(stream);
  });
  addRoute(app, service, apiRoutes.eraseLearner, ({ query, person }) => {
    const learner = person.id;
    if (query.confirm !== learner) throw new ApiFailure({ says: 'not-confirmed.learner', learner });
    // Where people sign in, the person, classes and papers are the class's as well: an administrator erases those.
    return service.mode === 'solo' ? store.erase(learner) : store.erasePractice(learner);
  });
}
