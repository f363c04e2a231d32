import { createHash } from 'node:crypto';
import type { FastifyInstance } from 'fastify';
import { apiRoutes } from '../../../shared/api.ts';
import { addRoute } from '../add-route.ts';
import type { Service } from '../service.ts';

/** Whether one of the tags in If-None-Match is this one; how strong they are doesn't matter there (RFC 9110, 13.1.2). */
const knows = (header: string | undefined, tag: string): boolean =>
  (header ?? '').split(',').some((known) => known.trim().replace(/^W\//, '') === tag || known.trim() === '*');

/** The topics. They don't change while the server runs; a browser that has them is told so in a few bytes. */
export function addBank(app: FastifyInstance, service: Service): void {
  const { bank } = service;
  const text = JSON.stringify(bank);
  const tag = `"${createHash('sha256').update(text).digest('base64url')}"`;
  addRoute(app, service, apiRoutes.bank, ({ request, reply }) => {
    // Weak, because a compressed reply has other bytes under the same tag.
    reply.header('etag', `W/${tag}`).header('cache-control', 'no-cache');
    if (knows(request.headers['if-none-match'], tag)) return reply.code(304).send();
    return reply.type('application/json; charset=utf-8').send(text);
  });
}
