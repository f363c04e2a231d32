import type { FastifyInstance } from 'fastify';
import { peopleRoutes } from '../../../../shared/api-people.ts';
import { addRoute } from '../../add-route.ts';
import { meOf } from '../../people/entering.ts';
import { throttled } from '../../people/limits.ts';
import { checkPassword } from '../../people/password-rules.ts';
import { refusal } from '../../people/refusals.ts';
import { ApiFailure, noSuchThing } from '../../problems.ts';
import type { Service } from '../../service.ts';

/** What somebody who has signed in does about that: sessions and password. */
export function addOwn(app: FastifyInstance, service: Service): void {
  const { store, passwords } = service;
  const { persons, sessions } = store.people;

  addRoute(app, service, peopleRoutes.sessions, async ({ person }) => ({
    sessions: (await sessions.list(person.id)).map((one) => ({ ...one, current: one.id === person.session })),
  }));
  addRoute(app, service, peopleRoutes.endOtherSessions, async ({ person }) => ({
    ended: await sessions.endAll(person.id, person.session),
  }));
  addRoute(app, service, peopleRoutes.endSession, async ({ person, params }) => {
    if (!(await sessions.end(person.id, params.session))) throw noSuchThing();
    return { done: true };
  });

  addRoute(app, service, peopleRoutes.setPassword, async ({ body, person }) => {
    const known = await persons.passwordHashOf(person.id);
    if (known !== null)
      // By session: whoever got hold of another one of theirs can't keep them from changing it here.
      await throttled(
        service,
        { what: 'password', account: person.id, thing: person.session ?? '' },
        async () => {
          if (!(await passwords.matches(body.old ?? '', known, person.id))) throw refusal('sign-in-refused');
        },
      );
    else if (body.signIn === undefined && (await persons.byId(person.id))?.signIn === null)
      throw new ApiFailure({ says: 'bad-value.noSignIn' });
    checkPassword(body.password, body.signIn ?? (await persons.byId(person.id))?.signIn ?? null);
    const passwordHash = await passwords.hash(body.password, person.id);
    if (!(await persons.setPassword(person.id, passwordHash, body.signIn ?? null, person.session)))
      throw refusal('name-taken');
    return meOf(service, person.id);
  });
}
