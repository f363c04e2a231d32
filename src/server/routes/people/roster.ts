import type { FastifyInstance } from 'fastify';
import { peopleRoutes } from '../../../../shared/api-people.ts';
import { zipFiles } from '../../../homework/index.ts';
import { tellProblems } from '../../../words/problems.ts';
import { say } from '../../../words/statement.ts';
import { addRoute } from '../../add-route.ts';
import { checkTeaches } from '../../people/may.ts';
import { refusal } from '../../people/refusals.ts';
import { wantedIn } from '../../people/roster-in.ts';
import { oneRosterFiles, rosterCsv } from '../../people/roster-out.ts';
import { noSuchThing } from '../../problems.ts';
import type { Service } from '../../service.ts';

const ROSTER_BYTES = 4 * 1024 * 1024;

/** Rosters, both ways. */
export function addRoster(app: FastifyInstance, service: Service): void {
  const { words, store } = service;
  const { classes, joining } = store.people;

  addRoute(
    app,
    service,
    peopleRoutes.takeRoster,
    async ({ body, person, params, query }) => {
      await checkTeaches(store, person, params.class);
      const wanted = wantedIn(body);
      if (!wanted.ok)
        return { result: 'mistakes', problems: tellProblems(words, wanted.problems.slice(0, 200)) };
      const look = query.look === 'yes';
      const rosterOptions = { asAdmin: person.role === 'admin', look };
      const taken = await joining.byRoster(params.class, wanted.value, rosterOptions);
      if (taken === null) throw noSuchThing();
      if (taken === 'class-full') throw refusal('class-full');
      const passedOver = taken.passedOver.map((why) => say(words.server.store.passedOver, why));
      return { result: 'taken', kept: !look, lines: taken.lines, passedOver };
    },
    { bodyLimit: ROSTER_BYTES },
  );

  addRoute(app, service, peopleRoutes.giveRoster, async ({ person, params, query, reply }) => {
    await checkTeaches(store, person, params.class);
    const detail = await classes.get(params.class);
    if (!detail) throw noSuchThing();
    const [name, type] =
      query.format === 'csv' ? ['class.csv', 'text/csv'] : ['oneroster.zip', 'application/zip'];
    reply.header('content-disposition', `attachment; filename="${name}"`);
    if (query.format === 'csv') return reply.type(`${type}; charset=utf-8`).send(rosterCsv(detail));
    return reply.type(type).send(Buffer.from(zipFiles(oneRosterFiles(detail, words))));
  });
}
