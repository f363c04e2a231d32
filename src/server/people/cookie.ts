import type { FastifyReply, FastifyRequest } from 'fastify';

/** The cookie that holds the token of a session, and nothing else. */
export const SESSION_COOKIE = 'polewise_session';

const TOKEN = /^[A-Za-z0-9_-]{43}$/;

/** The token that came with a request; null where none came, or nothing that could be one. */
export function tokenIn({ headers }: FastifyRequest): string | null {
  for (const part of (headers.cookie ?? '').split(';')) {
    const [name, value] = part.trim().split('=', 2);
    if (name === SESSION_COOKIE && value !== undefined && TOKEN.test(value)) return value;
  }
  return null;
}

interface Keeping {
  /** Seconds that the browser keeps it. */
  readonly seconds: number;
  /** Whether the browser may only send it by https. */
  readonly secure: boolean;
}

/** No script can read it, no page of another site can have it sent, and it goes by https only where that is spoken. */
const cookie = (value: string, { seconds, secure }: Keeping): string =>
  `${SESSION_COOKIE}=${value}; Max-Age=${seconds}; Path=/; HttpOnly; SameSite=Strict${secure ? '; Secure' : ''}`;

export const setToken = (reply: FastifyReply, token: string, keeping: Keeping): FastifyReply =>
  reply.header('set-cookie', cookie(token, keeping));

export const dropToken = (reply: FastifyReply, secure: boolean): FastifyReply =>
  reply.header('set-cookie', cookie('', { seconds: 0, secure }));
