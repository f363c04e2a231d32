import type { FastifyInstance, FastifyRequest } from 'fastify';
import { peopleRoutes } from '../../../../shared/api-people.ts';
import { addRoute } from '../../add-route.ts';
import { enter, meOf } from '../../people/entering.ts';
import { addressOf, throttled } from '../../people/limits.ts';
import { checkPassword } from '../../people/password-rules.ts';
import { refusal } from '../../people/refusals.ts';
import type { Service } from '../../service.ts';

/** Coming into a class by its code. */
export function addJoining(app: FastifyInstance, service: Service): void {
  const { store, passwords } = service;
  const { joining } = store.people;

  /** A code that is tried, by whom. */
  const trying = (request: FastifyRequest, code: string) => ({
    what: 'code',
    address: addressOf(service, request),
    thing: code,
  });

  addRoute(app, service, peopleRoutes.lookAtCode, ({ body, request }) =>
    throttled(service, trying(request, body.code), async () => {
      const title = await joining.look(body.code);
      if (title === null) throw refusal('code-refused');
      return { title };
    }),
  );

  addRoute(app, service, peopleRoutes.join, async ({ body, request, reply }) => {
    const { code, name, signIn, password } = body;
    const person = await throttled(service, trying(request, code), async () => {
      // Before the costly hash, so that guessing codes costs the server little.
      if ((await joining.look(code)) === null) throw refusal('code-refused');
      return code;
    }).then(async () => {
      checkPassword(password, signIn);
      const passwordHash = await passwords.hash(password, addressOf(service, request));
      const made = await joining.asNew(code, { name, signIn, passwordHash });
      if (typeof made === 'string') throw refusal(made);
      return made;
    });
    return enter(service, request, reply, person.id);
  });

  addRoute(app, service, peopleRoutes.joinClass, async ({ body, person }) => {
    await throttled(service, { what: 'code', account: person.id }, async () => {
      const result = await joining.asKnown(body.code, person.id);
      if (result !== 'joined') throw refusal(result);
    });
    return meOf(service, person.id);
  });
}
