import type { FastifyInstance, FastifyReply } from 'fastify';
import { peopleRoutes } from '../../../../shared/api-people.ts';
import type { ClassDetail, Member } from '../../../../shared/people.ts';
import type { JoiningSlip } from '../../../homework/print/index.ts';
import { addRoute } from '../../add-route.ts';
import type { Asking } from '../../people/gate.ts';
import { linkFor } from '../../people/link-address.ts';
import { checkTeaches, mayCareFor } from '../../people/may.ts';
import { noSuchThing } from '../../problems.ts';
import type { Service } from '../../service.ts';

/** How many slips there are for a class that nobody is in yet. */
const FOR_NOBODY = 12;

/** Whom the slips with links are for: those named, or all who couldn't come in by themselves. */
function chosen(
  asking: Asking,
  { members }: ClassDetail,
  ids: readonly string[] | undefined,
): readonly Member[] {
  const possible = members.filter((one) => one.manner === 'learner' && mayCareFor(asking, one));
  if (!ids) return possible.filter(({ hasPassword }) => !hasPassword);
  return [...new Set(ids)].map((id) => {
    const found = possible.find((one) => one.id === id);
    if (!found) throw noSuchThing();
    return found;
  });
}

/** Slips to hand out. */
export function addSlips(app: FastifyInstance, service: Service): void {
  const { store, transport, now } = service;
  const { classes, links } = store.people;

  const classFor = async (person: Asking, id: string): Promise<ClassDetail> => {
    await checkTeaches(store, person, id);
    const detail = await classes.get(id);
    if (!detail) throw noSuchThing();
    return detail;
  };
  const send = async (
    reply: FastifyReply,
    { title, joiningCode }: ClassDetail,
    address: string,
    slips: readonly JoiningSlip[],
  ): Promise<FastifyReply> => {
    // Only who prints needs what writes PDF.
    const { joiningSlipsPdf } = await import('../../../homework/print/index.ts');
    const pdf = await joiningSlipsPdf({
      words: service.words,
      className: title,
      code: joiningCode,
      address,
      slips,
      made: new Date(now()),
    });
    return reply
      .type('application/pdf')
      .header('content-disposition', 'attachment; filename="slips.pdf"')
      .send(Buffer.from(pdf));
  };

  addRoute(app, service, peopleRoutes.slips, async ({ person, params, query, request, reply }) => {
    const detail = await classFor(person, params.class);
    const count = query.count ?? (detail.learners || FOR_NOBODY);
    const slips = Array.from({ length: count }, () => ({ name: null, link: null }));
    return send(reply, detail, transport.originOf(request), slips);
  });

  addRoute(
    app,
    service,
    peopleRoutes.linkSlips,
    async ({ body, person, params, request, reply }) => {
      const detail = await classFor(person, params.class);
      const slips: JoiningSlip[] = [];
      for (const { id, name } of chosen(person, detail, body.people)) {
        const { address } = linkFor(service, request, await links.make(id));
        slips.push({ name, link: address });
      }
      return send(reply, detail, transport.originOf(request), slips);
    },
    { bodyLimit: 64 * 1024 },
  );
}
