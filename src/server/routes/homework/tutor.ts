import type { FastifyInstance } from 'fastify';
import { homeworkRoutes } from '../../../../shared/api-homework.ts';
import { addRoute } from '../../add-route.ts';
import type { Desk } from '../../homework/desk.ts';
import { prepareSome } from '../../homework/make-papers.ts';
import { markedPaper, overridePaper, paperRows, typeMarks } from '../../homework/marked.ts';
import { type AnyReport, REPORT_NAMES, REPORTS } from '../../homework/reports/index.ts';
import { sampleOf } from '../../homework/sample.ts';
import {
  changeSet,
  closeLater,
  draftSet,
  issueSet,
  setRows,
  viewSet,
  withdrawSet,
} from '../../homework/sets.ts';
import type { Service } from '../../service.ts';

/** What tutors do and are told. */
export function addTutorsHomework(app: FastifyInstance, service: Service, desk: Desk): void {
  const { classHomework, draftHomework, homework, changeHomework, withdrawHomework } = homeworkRoutes;
  addRoute(app, service, classHomework, async ({ person, params }) => ({
    sets: await setRows(desk, person, params.class),
  }));
  addRoute(app, service, draftHomework, ({ person, params, body }) =>
    draftSet(desk, person, params.class, body),
  );
  addRoute(app, service, homework, ({ person, params }) => viewSet(desk, person, params.set));
  addRoute(app, service, changeHomework, ({ person, params, body }) =>
    changeSet(desk, person, params.set, body),
  );
  addRoute(app, service, withdrawHomework, async ({ person, params }) => ({
    result: await withdrawSet(desk, person, params.set),
  }));
  addRoute(app, service, homeworkRoutes.sampleHomework, ({ person, params, query }) =>
    sampleOf(desk, person, params.set, query.number),
  );
  addRoute(app, service, homeworkRoutes.issueHomework, ({ person, params }) =>
    issueSet(desk, person, params.set),
  );
  addRoute(app, service, homeworkRoutes.closeLater, ({ person, params, body }) =>
    closeLater(desk, person, params.set, body.closesAt),
  );
  addRoute(app, service, homeworkRoutes.prepareHomework, ({ person, params }) =>
    prepareSome(desk, person, params.set),
  );
  addRoute(app, service, homeworkRoutes.homeworkPapers, ({ person, params }) =>
    paperRows(desk, person, params.set),
  );
  addRoute(app, service, homeworkRoutes.markedPaper, ({ person, params }) =>
    markedPaper(desk, person, params.paper),
  );
  addRoute(app, service, homeworkRoutes.overrideMark, ({ person, params, body }) =>
    overridePaper(desk, person, params.paper, body),
  );
  addRoute(app, service, homeworkRoutes.typeMarks, ({ person, params, body }) =>
    typeMarks(desk, person, params.set, body),
  );
  for (const name of REPORT_NAMES) {
    const report = REPORTS[name] as AnyReport;
    addRoute(app, service, homeworkRoutes[name], ({ person, params, query }) =>
      report(desk, person, { params, query }),
    );
  }
}
