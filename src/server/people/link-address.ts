import type { FastifyRequest } from 'fastify';
import type { EntryLink } from '../../../shared/people.ts';
import type { MadeLink } from '../../store/index.ts';
import type { Service } from '../service.ts';

/** The token is behind the #, which browsers keep to themselves: it is in no server's log and in no referrer. */
export const entryAddress = (origin: string, token: string): string => `${origin}/#/enter/${token}`;

export const linkFor = (
  { transport }: Service,
  request: FastifyRequest,
  { token, until }: MadeLink,
): EntryLink => ({ address: entryAddress(transport.originOf(request), token), until });
