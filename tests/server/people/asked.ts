/** A request and a reply, as far as those who let somebody in look at them. */
import type { FastifyReply, FastifyRequest } from 'fastify';
import { ApiFailure } from '../../../src/server/problems.ts';

export const asked = (headers: Readonly<Record<string, string | string[]>> = {}, ip = '127.0.0.1') =>
  ({ headers, ip }) as unknown as FastifyRequest;

/** A reply that takes headers; `set` are the cookies that it was given. */
export function replying(): { readonly reply: FastifyReply; readonly set: string[] } {
  const set: string[] = [];
  const reply = {
    header(name: string, value: string) {
      if (name === 'set-cookie') set.push(value);
      return reply;
    },
  };
  return { reply: reply as unknown as FastifyReply, set };
}

/** What a cookie that was set is sent back as. */
export const sentBack = (cookie: string): string => cookie.split(';')[0]!;

/** How something was refused: what is said of it; 'let in' when it wasn't. */
export async function outcome(work: () => unknown): Promise<string> {
  try {
    await work();
    return 'let in';
  } catch (error) {
    if (error instanceof ApiFailure) return error.why.says;
    throw error;
  }
}
