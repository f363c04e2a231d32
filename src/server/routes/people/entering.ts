import type { FastifyInstance } from 'fastify';
import { peopleRoutes } from '../../../../shared/api-people.ts';
import { signInName } from '../../../../shared/people.ts';
import { addRoute } from '../../add-route.ts';
import { dropToken, tokenIn } from '../../people/cookie.ts';
import { deviceIn, enter, handOver, meOf } from '../../people/entering.ts';
import { isFirstRunKey } from '../../people/first-run.ts';
import { deviceKnownTo, rememberDevice } from '../../people/known-device.ts';
import { addressOf, throttled } from '../../people/limits.ts';
import { checkPassword } from '../../people/password-rules.ts';
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
    // Nothing is counted: the key has 96 random bits, so that guessing it is no use, and wrong ones hold up nobody.
    if (!(await isFirstRunKey(people, body.key)) || (await people.persons.hasAdmin()))
      throw refusal('first-run-refused');
    checkPassword(body.password, body.signIn);
    const passwordHash = await passwords.hash(body.password, 'first-run');
    const made = await people.persons.makeFirstAdmin({ name: body.name, signIn: body.signIn, passwordHash });
    if (made === 'too-late') throw refusal('first-run-refused');
    if (made === 'name-taken') throw refusal('name-taken');
    return enter(service, request, reply, made.id);
  });

  addRoute(app, service, peopleRoutes.signIn, async ({ body, request, reply }) => {
    const name = signInName.safeParse(body.signIn.trim().toLowerCase());
    const account = name.data ?? 'none';
    const address = addressOf(service, request);
    const known = name.success ? await people.persons.bySignIn(name.data) : null;
    const device = known && (await deviceKnownTo(people, request, known.person.id));
    const tried = { what: 'sign-in', account, address, device, otherWays: true };
    const person = await throttled(service, tried, async () => {
      // Also where there is nobody of that name, so that both take as long.
      const owner = device === null ? address : `known ${account}`;
      const right = await passwords.matches(body.password, known?.passwordHash ?? null, owner);
      if (!known || !right) throw refusal('sign-in-refused');
      return known.person;
    });
    return enter(service, request, reply, person.id);
  });

  addRoute(app, service, peopleRoutes.signInWithLink, async ({ body, request, reply }) => {
    // Nothing is counted: a token has 256 random bits.
    const token = await people.links.use(body.token, deviceIn(service, request));
    if (token === null) throw refusal('link-refused');
    handOver(service, request, reply, token);
    const holder = await people.sessions.holderOf(token);
    if (holder) await rememberDevice(people, request, reply, holder.person, transport.isHttps(request));
    return meOf(service, holder?.person ?? null);
  });

  addRoute(app, service, peopleRoutes.signOut, async ({ request, reply }) => {
    const token = tokenIn(request);
    if (token !== null) await people.sessions.endByToken(token);
    dropToken(reply, transport.isHttps(request));
    return { done: true };
  });
}
