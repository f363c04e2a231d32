import type { FastifyInstance } from 'fastify';
import { peopleRoutes } from '../../../../shared/api-people.ts';
import { addRoute } from '../../add-route.ts';
import { enter, meOf } from '../../people/entering.ts';
import { byAccount, byAddress, joiningBy, onlySoOften, take } from '../../people/limits.ts';
import { refusal } from '../../people/refusals.ts';
import type { Service } from '../../service.ts';

/** Coming into a class by its code. */
export function addJoining(app: FastifyInstance, service: Service): void {
  const { store, passwords } = service;
  const { joining } = store.people;

  addRoute(app, service, peopleRoutes.lookAtCode, ({ body, request }) =>
    onlySoOften(service, { address: byAddress(service, request, 'code') }, async () => {
      const title = await joining.look(body.code);
      if (title === null) throw refusal('code-refused');
      return { title };
    }),
  );

  addRoute(app, service, peopleRoutes.join, async ({ body, request, reply }) => {
    const { code, name, signIn, password } = body;
    await take(service, joiningBy(service, request));
    const person = await onlySoOften(service, { address: byAddress(service, request, 'code') }, async () => {
      // Before the costly hash, so that guessing codes costs the server little.
      if ((await joining.look(code)) === null) throw refusal('code-refused');
      const made = await joining.asNew(code, { name, signIn, passwordHash: await passwords.hash(password) });
      if (typeof made === 'string') throw refusal(made);
      return made;
    });
    return enter(service, request, reply, person.id);
  });

  addRoute(app, service, peopleRoutes.joinClass, async ({ body, person, request }) => {
    const limits = { account: byAccount('code', person.id), address: byAddress(service, request, 'code') };
    await onlySoOften(service, limits, async () => {
      const result = await joining.asKnown(body.code, person.id);
      if (result !== 'joined') throw refusal(result);
    });
    return meOf(service, person.id);
  });
}
