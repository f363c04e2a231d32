import type { Readable } from 'node:stream';
import type { FastifyInstance, FastifyReply } from 'fastify';
import { homeworkRoutes } from '../../../../shared/api-homework.ts';
import type { FileReply } from '../../../../shared/api-route.ts';
import { addRoute } from '../../add-route.ts';
import type { Desk } from '../../homework/desk.ts';
import { marksFile, packageOf, statementsFile } from '../../homework/exports.ts';
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
  const { papersPdf, keyPdf, evidencePdf, marksCsv, statements, package30, package22 } = homeworkRoutes;
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
  addRoute(app, service, marksCsv, async ({ person, params, reply }) =>
    send(reply, marksCsv.reply, 'marks.csv', await streamOf(await marksFile(desk, person, params.set))),
  );
  addRoute(app, service, statements, async ({ person, params, request, reply }) => {
    const base = service.transport.originOf(request);
    const file = await statementsFile(desk, person, params.set, base);
    return send(reply, statements.reply, 'statements.json', await streamOf(file));
  });
  addRoute(app, service, package30, async ({ person, params, reply }) =>
    send(reply, package30.reply, 'package-3.0.zip', await packageOf(desk, person, params.set, '3.0')),
  );
  addRoute(app, service, package22, async ({ person, params, reply }) =>
    send(reply, package22.reply, 'package-2.2.zip', await packageOf(desk, person, params.set, '2.2')),
  );
}
