import type { FastifyInstance } from 'fastify';
import { peopleRoutes } from '../../../../shared/api-people.ts';
import { addRoute } from '../../add-route.ts';
import { linkFor } from '../../people/link-address.ts';
import { inCareOf } from '../../people/may.ts';
import { refusal } from '../../people/refusals.ts';
import { streamOf } from '../../piece-stream.ts';
import { ApiFailure, noSuchThing } from '../../problems.ts';
import type { Service } from '../../service.ts';

/** What tutors do for their learners, and administrators for everybody. */
export function addPersons(app: FastifyInstance, service: Service): void {
  const { store, words } = service;
  const { links, persons, sessions } = store.people;

  addRoute(app, service, peopleRoutes.newLink, async ({ person, params, request }) => {
    const found = await inCareOf(store, person, params.person);
    return { person: found, link: linkFor(service, request, await links.make(found.id)) };
  });
  addRoute(app, service, peopleRoutes.endSessionsOf, async ({ person, params }) => {
    const found = await inCareOf(store, person, params.person);
    return { ended: await sessions.endAll(found.id) };
  });
  addRoute(app, service, peopleRoutes.renamePerson, async ({ body, person, params }) => {
    const found = await inCareOf(store, person, params.person);
    const renamed = await persons.rename(found.id, body.name);
    if (!renamed) throw noSuchThing();
    return { person: renamed };
  });

  addRoute(app, service, peopleRoutes.people, ({ query }) =>
    persons.find(query.find, query.from, query.limit),
  );
  addRoute(app, service, peopleRoutes.newPerson, async ({ body, request }) => {
    const person = (await persons.make(body))!;
    return { person, link: linkFor(service, request, await links.make(person.id)) };
  });
  addRoute(app, service, peopleRoutes.changeRole, async ({ body, params }) => {
    const person = await persons.changeRole(params.person, body.role);
    if (person === null) throw noSuchThing();
    if (person === 'last-admin') throw refusal('last-admin');
    return { person };
  });
  addRoute(app, service, peopleRoutes.exportPerson, async ({ params, reply }) => {
    if (!(await persons.byId(params.person))) throw noSuchThing();
    return reply
      .type('application/json; charset=utf-8')
      .header('content-disposition', 'attachment; filename="polewise-export.json"')
      .send(await streamOf(store.exportOf(params.person, words)));
  });
  addRoute(app, service, peopleRoutes.erasePerson, async ({ params, query }) => {
    const { person: id } = params;
    if (!(await persons.byId(id))) throw noSuchThing();
    if (query.confirm !== id) throw new ApiFailure({ says: 'not-confirmed.person', id });
    // So that of two administrators who erase each other at the same moment one stays.
    if ((await persons.changeRole(id, 'learner')) === 'last-admin') throw refusal('last-admin');
    await store.erase(id);
    return { done: true };
  });
}
