import type { Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { homeworkRoutes } from '../../../../shared/api-homework.ts';
import type { FileReply } from '../../../../shared/api-route.ts';
import { addRoute } from '../../add-route.ts';
import type { Desk } from '../../homework/desk.ts';
import { EXPORT_NAMES, EXPORTS, type ExportName } from '../../homework/exports.ts';
import { evidenceFile, keyFile, papersFile } from '../../homework/prints.ts';
import { streamOf } from '../../piece-stream.ts';
import type { Service } from '../../service.ts';

/** Sends a file to be saved under this name. */
const send = (
  reply: FastifyReply,
  { types }: FileReply,
  name: string,
  content: string | Uint8Array | Readable,
): FastifyReply =>
  reply
    .type(types[0]!)
    .header('content-disposition', `attachment; filename="${name}"`)
    .send(content instanceof Uint8Array ? Buffer.from(content) : content);

/** Homework as files. */
export function addHomeworkFiles(app: FastifyInstance, service: Service, desk: Desk): void {
  const { papersPdf, keyPdf, evidencePdf } = homeworkRoutes;
  addRoute(app, service, papersPdf, async ({ person, params, query, reply }) =>
    send(
      reply,
      papersPdf.reply,
      'papers.pdf',
      await streamOf(await papersFile(desk, person, params.set, query.zone)),
    ),
  );
  addRoute(app, service, keyPdf, async ({ person, params, reply }) =>
    send(reply, keyPdf.reply, 'key.pdf', await streamOf(await keyFile(desk, person, params.set))),
  );
  addRoute(app, service, evidencePdf, async ({ person, params, query, reply }) =>
    send(reply, evidencePdf.reply, 'evidence.pdf', await evidenceFile(desk, person, params.person, query)),
  );
  for (const name of EXPORT_NAMES) {
    const route = homeworkRoutes[name];
    const make: (typeof EXPORTS)[ExportName] = EXPORTS[name];
    addRoute(app, service, route, async ({ person, params, request, reply }) => {
      const content = await make(desk, person, params.set, () => service.transport.originOf(request));
      const sent = content instanceof Uint8Array ? content : await streamOf(content);
      return send(reply, route.reply, route.path.slice(route.path.lastIndexOf('/') + 1), sent);
    });
  }
}
