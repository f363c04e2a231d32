/** Beginning a session, and telling the page who it is for. */
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Me } from '../../../shared/api-people.ts';
import { SESSION_LASTS } from '../../store/index.ts';
import type { Service } from '../service.ts';
import { setToken, tokenIn } from './cookie.ts';
import { deviceOf } from './device.ts';
import { rememberDevice } from './known-device.ts';

/** Who somebody is, as the page has to know it. */
export async function meOf({ store: { people } }: Service, id: string | null): Promise<Me> {
  const person = id === null ? null : await people.persons.byId(id);
  return {
    mode: 'class',
    person: person && { ...person, classes: [...(await people.classes.of(person.id))] },
    firstRun: person === null && !(await people.persons.hasAdmin()),
  };
}

export const deviceIn = ({ words }: Service, { headers }: FastifyRequest): string =>
  deviceOf(headers['user-agent'], words);

/** Gives the browser the token of a session. */
export const handOver = (
  service: Service,
  request: FastifyRequest,
  reply: FastifyReply,
  token: string,
): void => {
  setToken(reply, token, {
    seconds: Math.floor(SESSION_LASTS / 1000),
    secure: service.transport.isHttps(request),
  });
};

/** Begins a session for somebody, in the place of one that the browser still had, and gives what the page has to know. */
export async function enter(
  service: Service,
  request: FastifyRequest,
  reply: FastifyReply,
  person: string,
): Promise<Me> {
  const { sessions } = service.store.people;
  const before = tokenIn(request);
  if (before !== null) await sessions.endByToken(before);
  handOver(service, request, reply, await sessions.begin(person, deviceIn(service, request)));
  await rememberDevice(service.store.people, request, reply, person, service.transport.isHttps(request));
  return meOf(service, person);
}
