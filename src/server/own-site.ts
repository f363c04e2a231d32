/**
 * Who may ask. Without a sign-in the server trusts whoever sits at this machine, so it answers only requests made for
 * it by name (a foreign name that was made to point here would let any web page in) and only pages of its own.
 */
import type { IncomingHttpHeaders } from 'node:http';
import { ApiFailure } from './problems.ts';

const HOST = /^(\[[0-9a-f:.]+\]|[a-z0-9.-]+)(?::\d{1,5})?$/i;
const LOOPBACK = /^(?:localhost|127(?:\.\d{1,3}){3}|\[::1\])$/i;

/** Whether an address to listen on can be reached from this machine only. */
export const isLoopback = (host: string): boolean => LOOPBACK.test(host) || host === '::1';

/** The name in a Host header, in small letters; undefined when it is none. */
const nameIn = (header: string | undefined): string | undefined =>
  HOST.exec(header ?? '')?.[1]?.toLowerCase();

/** Refuses requests for names other than the loopback's and those given. */
export function checkHost({ host }: IncomingHttpHeaders, names: ReadonlySet<string>): void {
  const name = nameIn(host);
  if (name !== undefined && (LOOPBACK.test(name) || names.has(name))) return;
  throw new ApiFailure({ says: 'foreign-host' });
}

function isOwnOrigin(origin: string, host: string | undefined): boolean {
  try {
    return new URL(origin).host === host?.toLowerCase();
  } catch {
    return false;
  }
}

/**
 * Refuses what a page of another site asks for: browsers say so in Sec-Fetch-Site, and in Origin where something is
 * changed. What comes without either is no browser.
 */
export function checkSite(headers: IncomingHttpHeaders): void {
  const site = headers['sec-fetch-site'];
  const { origin, host } = headers;
  const foreign =
    (site !== undefined && site !== 'same-origin' && site !== 'none') ||
    (origin !== undefined && !isOwnOrigin(origin, host));
  if (!foreign) return;
  throw new ApiFailure({ says: 'foreign-site' });
}
