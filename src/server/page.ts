import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Words } from '../words/index.ts';
import { API_PROBLEMS } from './problems.ts';

const missingIn = ({ speech, server: { pageMissing } }: Words): string => `<!doctype html>
<html lang="${speech.language}">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<title>${pageMissing.title}</title>
<h1>${pageMissing.heading}</h1>
${pageMissing.paragraphs.map((text) => `<p>${text}</p>`).join('\n')}
`;

/** Vite names what is in assets/ by its content, so it never changes; everything else is asked for each time. */
const FOR_EVER = 'public, max-age=31536000, immutable';

/** Whether somebody opens an address of the page itself: those have no file ending and are not the interface's. */
const isPage = ({ method, url, headers }: FastifyRequest): boolean => {
  const path = url.split('?')[0]!;
  return (
    (method === 'GET' || method === 'HEAD') &&
    !path.startsWith('/api/') &&
    !path.split('/').at(-1)!.includes('.') &&
    (headers.accept ?? '').includes('text/html')
  );
};

/** The page's own script: named by its content, it is another one in another build. */
const scriptOf = (html: string): string | undefined => /<script[^>]+src="([^"]+)"/.exec(html)?.[1];

export interface Page {
  /** Answers what no route and no file answers, when it is an address of the page. */
  reply(request: FastifyRequest, reply: FastifyReply): FastifyReply | undefined;
}

/**
 * Serves the built page from its folder. Files that were compressed when it was built (.br, .gz) are sent as they are.
 * Without a built page an explanation stands in its place.
 */
export async function addPage(app: FastifyInstance, folder: string, words: Words): Promise<Page> {
  const built = existsSync(join(folder, 'index.html'));
  const script = built ? scriptOf(readFileSync(join(folder, 'index.html'), 'utf8')) : undefined;
  // A page that has been open for days hears by it that there is another one.
  if (script)
    app.addHook('onRequest', async ({ url }, reply) => {
      if (url.startsWith('/api/')) reply.header('polewise-page', script);
    });
  if (built)
    await app.register(fastifyStatic, {
      root: folder,
      preCompressed: true,
      cacheControl: false,
      dotfiles: 'ignore',
      setHeaders: (reply, path) => {
        const inAssets = path.slice(folder.length).replaceAll('\\', '/').startsWith('/assets/');
        reply.setHeader('cache-control', inAssets ? FOR_EVER : 'no-cache');
      },
    });
  return {
    reply(request, reply) {
      if (!isPage(request)) return undefined;
      if (built) return reply.sendFile('index.html');
      return reply
        .code(API_PROBLEMS['page-not-built'].status!)
        .header('cache-control', 'no-store')
        .type('text/html; charset=utf-8')
        .send(missingIn(words));
    },
  };
}
