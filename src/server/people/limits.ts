/** How often something may be tried. docs/api.md has the numbers. */
import type { FastifyRequest } from 'fastify';
import type { TryLimit } from '../../store/index.ts';
import { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';

const MINUTES = 60_000;

/** Ten wrong ones in ten minutes for one account, whoever tries. */
export const byAccount = (what: string, account: string): TryLimit => ({
  what: `${what}|account|${account}`,
  most: 10,
  within: 10 * MINUTES,
});

/** A hundred wrong ones in ten minutes from one address, whichever account is tried: a whole class may sit behind it. */
export const byAddress = (service: Service, request: FastifyRequest, what: string): TryLimit => ({
  what: `${what}|address|${service.transport.senderOf(request)}`,
  most: 100,
  within: 10 * MINUTES,
});

/** Four hundred new people in an hour from one address. */
export const joiningBy = (service: Service, request: FastifyRequest): TryLimit => ({
  what: `join|address|${service.transport.senderOf(request)}`,
  most: 400,
  within: 60 * MINUTES,
});

const tooMany = (seconds: number): ApiFailure =>
  new ApiFailure(
    'too-many-tries',
    'There were too many tries.',
    `Try again in ${seconds > 90 ? `${Math.ceil(seconds / 60)} minutes` : `${seconds} seconds`}.`,
    seconds,
  );

/** Counts one try, or refuses it. */
export async function take({ store }: Service, limit: TryLimit): Promise<void> {
  const seconds = await store.people.tries.take(limit);
  if (seconds !== null) throw tooMany(seconds);
}

interface WrongLimits {
  /** Counted before the try and given back when it was right, so that many at once can't slip through. */
  readonly account?: TryLimit;
  /** Counted when it was wrong: hundreds of people behind one address may be right at the same moment. */
  readonly address?: TryLimit;
}

/** Whether it was refused for what was tried, and not because the server couldn't do it. */
const wasWrong = (error: unknown): boolean => error instanceof ApiFailure && error.status < 500;

/** Does something that may go wrong only so often; what goes right doesn't count. */
export async function onlySoOften<T>(
  service: Service,
  { account, address }: WrongLimits,
  work: () => Promise<T>,
): Promise<T> {
  const { tries } = service.store.people;
  const seconds = address ? await tries.wait(address) : null;
  if (seconds !== null) throw tooMany(seconds);
  if (account) await take(service, account);
  try {
    const result = await work();
    if (account) await tries.giveBack(account);
    return result;
  } catch (error) {
    if (wasWrong(error)) {
      if (address) await tries.take(address);
    } else if (account) await tries.giveBack(account);
    throw error;
  }
}
