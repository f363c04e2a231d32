import type { FastifyInstance } from 'fastify';
import { peopleRoutes } from '../../../../shared/api-people.ts';
import { signInName } from '../../../../shared/people.ts';
import { addRoute } from '../../add-route.ts';
import { dropToken, tokenIn } from '../../people/cookie.ts';
import { deviceIn, enter, handOver, meOf } from '../../people/entering.ts';
import { isFirstRunKey } from '../../people/first-run.ts';
import { byAccount, byAddress, onlySoOften } from '../../people/limits.ts';
import { refusal } from '../../people/refusals.ts';
import type { Service } from '../../service.ts';

/** Getting in: who asks, the first administrator, signing in with a password or a link, and out again. */
export function addEntering(app: FastifyInstance, service: Service): void {
  const { store, passwords, transport } = service;
  const { people } = store;

  addRoute(app, service, peopleRoutes.me, ({ person }) =>
    service.mode === 'solo'
      ? { mode: 'solo', person: null, firstRun: false }
      : meOf(service, person?.id ?? null),
  );

  addRoute(app, service, peopleRoutes.firstRun, async ({ body, request, reply }) => {
    const limits = {
      account: byAccount('first-run', 'administrator'),
      address: byAddress(service, request, 'first-run'),
    };
    await onlySoOften(service, limits, async () => {
      if (!(await isFirstRunKey(people, body.key)) || (await people.persons.hasAdmin()))
        throw refusal('first-run-refused');
    });
    const passwordHash = await passwords.hash(body.password);
    const made = await people.persons.makeFirstAdmin({ name: body.name, signIn: body.signIn, passwordHash });
    if (made === 'too-late') throw refusal('first-run-refused');
    if (made === 'name-taken') throw refusal('name-taken');
    return enter(service, request, reply, made.id);
  });

  addRoute(app, service, peopleRoutes.signIn, async ({ body, request, reply }) => {
    const name = signInName.safeParse(body.signIn.trim().toLowerCase());
    const limits = {
      account: byAccount('sign-in', name.data ?? 'none'),
      address: byAddress(service, request, 'sign-in'),
    };
    const person = await onlySoOften(service, limits, async () => {
      const found = name.success ? await people.persons.bySignIn(name.data) : null;
      // Also where there is nobody of that name, so that both take as long.
      const right = await passwords.matches(body.password, found?.passwordHash ?? null);
      if (!found || !right) throw refusal('sign-in-refused');
      return found.person;
    });
    return enter(service, request, reply, person.id);
  });

  addRoute(app, service, peopleRoutes.signInWithLink, async ({ body, request, reply }) => {
    const token = await onlySoOften(service, { address: byAddress(service, request, 'link') }, async () => {
      const begun = await people.links.use(body.token, deviceIn(request));
      if (begun === null) throw refusal('link-refused');
      return begun;
    });
    handOver(service, request, reply, token);
    const holder = await people.sessions.holderOf(token);
    return meOf(service, holder?.person ?? null);
  });

  addRoute(app, service, peopleRoutes.signOut, async ({ request, reply }) => {
    const token = tokenIn(request);
    if (token !== null) await people.sessions.endByToken(token);
    dropToken(reply, transport.isHttps(request));
    return { done: true };
  });
}
