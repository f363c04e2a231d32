import type { FastifyInstance } from 'fastify';
import { homeworkRoutes } from '../../../../shared/api-homework.ts';
import { phaseOf } from '../../../homework/index.ts';
import { addRoute } from '../../add-route.ts';
import { ownPaper } from '../../homework/access.ts';
import type { Desk } from '../../homework/desk.ts';
import {
  askHint,
  beginPaper,
  learnersSets,
  saveAnswers,
  submitPaper,
  viewPaper,
} from '../../homework/learner.ts';
import { reviewPaper } from '../../homework/marked.ts';
import { Marker } from '../../homework/marker.ts';
import { settlePaper } from '../../homework/settle.ts';
import { issueQuestions } from '../../practice/issue-questions.ts';
import type { Service } from '../../service.ts';

/** Room for a hundred answers with every lamp, input and terminal that one can be asked about. */
const SAVE_BYTES = 256 * 1024;

/** What learners do. */
export function addLearnersHomework(app: FastifyInstance, service: Service, desk: Desk): void {
  const marker = new Marker((error) => app.log.error(error));
  app.addHook('onClose', () => marker.stop());
  addRoute(app, service, homeworkRoutes.myHomework, async ({ person }) => ({
    sets: await learnersSets(desk, person),
  }));
  addRoute(app, service, homeworkRoutes.beginPaper, ({ person, params }) =>
    beginPaper(desk, person, params.set),
  );
  addRoute(app, service, homeworkRoutes.paper, ({ person, params }) => viewPaper(desk, person, params.paper));
  addRoute(
    app,
    service,
    homeworkRoutes.saveAnswers,
    ({ person, params, body }) => saveAnswers(desk, person, params.paper, body),
    { bodyLimit: SAVE_BYTES },
  );
  addRoute(app, service, homeworkRoutes.askHint, ({ person, params, body }) =>
    askHint(desk, person, params.paper, body.item),
  );
  addRoute(app, service, homeworkRoutes.submitPaper, async ({ person, params }) => {
    const submitted = await submitPaper(desk, person, params.paper);
    marker.later(async () => {
      const { kept } = await ownPaper(desk, person, params.paper);
      await settlePaper(desk, kept, params.paper);
    });
    return submitted;
  });
  addRoute(app, service, homeworkRoutes.issueQuestions, async ({ body, person }) => ({
    issued: [...(await issueQuestions(service, person.id, body.have))],
  }));
  addRoute(app, service, homeworkRoutes.guardedCircuits, async ({ person }) => {
    const at = service.now();
    const papers = (await service.guard.papersOf(person.id)).filter(
      ({ kept }) => phaseOf(kept.set, at) === 'open',
    );
    return {
      papers: papers.map(({ paper, kept: { set }, circuits }) => ({
        paper: paper.id,
        title: set.title,
        until: set.closesAt,
        circuits: [...circuits.keys()],
      })),
    };
  });
  addRoute(app, service, homeworkRoutes.triedElsewhere, async ({ person, body: { circuit, place } }) => {
    for (const paper of await service.guard.papersOf(person.id))
      if (paper.circuits.has(circuit)) await service.guard.tried({ paper, circuit }, place);
    return { done: true };
  });
  addRoute(app, service, homeworkRoutes.reviewPaper, ({ person, params }) =>
    reviewPaper(desk, person, params.paper),
  );
}
