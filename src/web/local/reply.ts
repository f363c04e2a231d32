/** What the server says, read as far as this page knows it. */
import type { z } from 'zod';
import { readLoosely } from '../loosely.ts';
import { isFromNewer } from '../renewed.ts';

export type Fetch = (path: string, init?: RequestInit) => Promise<Response>;

/**
 * How it went: `offline` covers every reason for which trying again later is right. `too-old`: the server is another
 * one than this page's, and what it says doesn't fit.
 */
export type SyncResult = 'done' | 'offline' | 'too-old';

type Checks = typeof import('../../../shared/api.ts') & typeof import('../../../shared/settings.ts');

/** A reply that came and fits, or why there is none. */
type Said<T> =
  | { readonly value: T }
  | { readonly value: undefined; readonly why: Exclude<SyncResult, 'done'> };
const OFFLINE = { value: undefined, why: 'offline' } as const;
const TOO_OLD = { value: undefined, why: 'too-old' } as const;

/** What a reply must look like. It is read when there is one: the first question doesn't wait for it. */
export const checks = async (): Promise<Checks> => {
  const [api, settings] = await Promise.all([
    import('../../../shared/api.ts'),
    import('../../../shared/settings.ts'),
  ]);
  return { ...api, ...settings };
};

/** A reply as this page knows it. */
export async function json<T>(
  fetching: Promise<Response>,
  schemaOf: (all: Checks) => z.ZodType<T>,
): Promise<Said<T>> {
  try {
    const response = await fetching;
    if (!response.ok) return OFFLINE;
    const value: unknown = await response.json();
    const read = readLoosely(schemaOf(await checks()), value);
    return read === undefined ? (isFromNewer(response) ? TOO_OLD : OFFLINE) : { value: read };
  } catch {
    return OFFLINE;
  }
}

export const sending = (method: 'POST' | 'PUT', body: unknown): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});
