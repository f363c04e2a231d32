/**
 * How often something may be tried. Who tries wrongly waits, longer each time; what one of them does never stops another
 * one who was there before. docs/api.md has the numbers.
 */
import type { FastifyRequest } from 'fastify';
import type { TryLimit } from '../../store/index.ts';
import { ApiFailure } from '../problems.ts';
import type { Service } from '../service.ts';

const MINUTES = 60_000;

/**
 * Wrong ones for one account from devices that it doesn't know, after which such a device waits before its first try: as
 * many as NIST SP 800-63B (3.2.2, "Rate Limiting") lets be tried at most; here a known device and a link go on.
 */
const OF_ACCOUNT = { most: 100, within: 24 * 60 * MINUTES, wait: 15 * 60 };
/** The same of one address, whatever is tried from it. */
const OF_ADDRESS = { most: 100, within: 10 * MINUTES, wait: 30 };

const overAccount = (what: string, account: string): TryLimit => ({
  what: `${what}|account|${account}`,
  ...OF_ACCOUNT,
});
const overAddress = (what: string, address: string): TryLimit => ({
  what: `${what}|address|${address}`,
  ...OF_ADDRESS,
});

/** Whether it was refused for what was tried, and not because the server couldn't do it. */
const wasWrong = (error: unknown): boolean => error instanceof ApiFailure && error.status < 500;

/** A try that goes right or wrong. */
interface Try {
  /** What is tried: `sign-in`. */
  readonly what: string;
  readonly account?: string;
  readonly address?: string;
  /** What is tried of the address: one thing that was told to wait doesn't hold up the next. */
  readonly thing?: string;
  /** A device that the account knows, by its own name. */
  readonly device?: string | null;
  /** Waiting isn't all that helps: there are other ways to sign in. */
  readonly otherWays?: boolean;
}

/** Seconds that one who hasn't tried yet waits: where so much was tried that somebody must be guessing. */
async function firstWait(
  { tries }: Service['store']['people'],
  { what, account, address }: Try,
): Promise<number> {
  if (account !== undefined && (await tries.wait(overAccount(what, account))) !== null)
    return OF_ACCOUNT.wait;
  if (address !== undefined && (await tries.wait(overAddress(what, address))) !== null)
    return OF_ADDRESS.wait;
  return 0;
}

/** Does something that may go wrong; who had it go wrong some times waits before the next try. */
export async function throttled<T>(service: Service, tried: Try, work: () => Promise<T>): Promise<T> {
  const { tries, throttles } = service.store.people;
  const { what, account = '', address = '', thing = '', device = null, otherWays = false } = tried;
  const own =
    device === null ? `${what}|${account}|${address}|${thing}` : `${what}|${account}|device|${device}`;
  const first = device === null ? await firstWait(service.store.people, tried) : 0;
  const seconds = await throttles.take(own, first);
  if (seconds !== null) {
    const says = otherWays ? 'too-many-tries.signingIn' : 'too-many-tries';
    throw new ApiFailure({ says, seconds }, seconds);
  }
  try {
    const result = await work();
    await throttles.right(own);
    return result;
  } catch (error) {
    if (!wasWrong(error)) await throttles.giveBack(own);
    else if (device === null) {
      if (tried.account !== undefined) await tries.take(overAccount(what, account));
      if (tried.address !== undefined) await tries.take(overAddress(what, address));
    }
    throw error;
  }
}

export const addressOf = ({ transport }: Service, request: FastifyRequest): string =>
  transport.senderOf(request);
