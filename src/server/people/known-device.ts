/**
 * Devices on which somebody has signed in before: what others try from elsewhere doesn't hold them up. The cookie lets
 * nobody in. (OWASP, "Slow Down Online Guessing Attacks with Device Cookies".)
 */
import { randomBytes, timingSafeEqual } from 'node:crypto';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { People } from '../../store/index.ts';

export const DEVICE_COOKIE = 'polewise_device';
/** Seconds that the browser keeps it: as long as browsers keep any. */
const LASTS = 400 * 86_400;
/** People of one device that are remembered on it, the latest first. */
const MOST = 8;

const MARK = /^[A-Za-z0-9_-]{12}\.[A-Za-z0-9_-]{43}$/;

const marksIn = ({ headers }: FastifyRequest): readonly string[] => {
  for (const part of (headers.cookie ?? '').split(';')) {
    const [name, value = ''] = part.trim().split('=', 2);
    if (name === DEVICE_COOKIE)
      return value
        .split('~')
        .slice(0, MOST)
        .filter((mark) => MARK.test(mark));
  }
  return [];
};

const signed = async ({ installation }: People, person: string, nonce: string): Promise<string> =>
  (await installation.keyed('device', `${person}|${nonce}`)).toString('base64url');

const same = (one: string, other: string): boolean =>
  one.length === other.length && timingSafeEqual(Buffer.from(one), Buffer.from(other));

/** The name of this device for a person who has signed in on it; null where nobody knows it. */
export async function deviceKnownTo(
  people: People,
  request: FastifyRequest,
  person: string,
): Promise<string | null> {
  for (const mark of marksIn(request)) {
    const [nonce, mac] = mark.split('.') as [string, string];
    if (same(mac, await signed(people, person, nonce))) return nonce;
  }
  return null;
}

/** Has the browser remember that this person signed in on it, beside those who did before. */
export async function rememberDevice(
  people: People,
  request: FastifyRequest,
  reply: FastifyReply,
  person: string,
  secure: boolean,
): Promise<void> {
  if ((await deviceKnownTo(people, request, person)) !== null) return;
  const nonce = randomBytes(9).toString('base64url');
  const marks = [`${nonce}.${await signed(people, person, nonce)}`, ...marksIn(request)].slice(0, MOST);
  reply.header(
    'set-cookie',
    `${DEVICE_COOKIE}=${marks.join('~')}; Max-Age=${LASTS}; Path=/; HttpOnly; SameSite=Strict${secure ? '; Secure' : ''}`,
  );
}
