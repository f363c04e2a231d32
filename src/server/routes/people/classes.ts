import type { FastifyInstance } from 'fastify';
import { peopleRoutes } from '../../../../shared/api-people.ts';
import type { ClassDetail } from '../../../../shared/people.ts';
import { addRoute } from '../../add-route.ts';
import type { Asking } from '../../people/gate.ts';
import { linkFor } from '../../people/link-address.ts';
import { checkTeaches } from '../../people/may.ts';
import { refusal } from '../../people/refusals.ts';
import { ApiFailure, noSuchThing } from '../../problems.ts';
import type { Service } from '../../service.ts';

type Work = () => Promise<ClassDetail | null>;

/** What is done with a class, for one who may. */
const classesOf =
  ({ store }: Service) =>
  async (person: Asking, id: string, work: Work): Promise<ClassDetail> => {
    await checkTeaches(store, person, id);
    const detail = await work();
    if (!detail) throw noSuchThing();
    return detail;
  };

/** Who is in a class: learners by their names, and tutors. */
function addMembers(app: FastifyInstance, service: Service): void {
  const { store } = service;
  const { classes, joining, persons } = store.people;
  const ofClass = classesOf(service);

  addRoute(
    app,
    service,
    peopleRoutes.addLearners,
    async ({ body, person, params, request }) => {
      await checkTeaches(store, person, params.class);
      const added = await joining.byNames(params.class, body.names);
      if (added === null) throw noSuchThing();
      if (typeof added === 'string') throw refusal(added);
      return {
        people: added.map((one) => ({ person: one.person, link: linkFor(service, request, one.link) })),
      };
    },
    { bodyLimit: 256 * 1024 },
  );
  addRoute(app, service, peopleRoutes.removeMember, ({ person, params }) =>
    ofClass(person, params.class, async () => {
      if (!(await classes.remove(params.class, params.person, 'learner'))) throw noSuchThing();
      return classes.get(params.class);
    }),
  );

  addRoute(app, service, peopleRoutes.addTutor, ({ body, person, params }) =>
    ofClass(person, params.class, async () => {
      const tutor = await persons.byId(body.person);
      if (!tutor || tutor.role === 'learner' || !(await classes.get(params.class))) throw noSuchThing();
      await classes.addTutor(params.class, tutor.id);
      return classes.get(params.class);
    }),
  );
  addRoute(app, service, peopleRoutes.removeTutor, ({ person, params }) =>
    ofClass(person, params.class, async () => {
      if (!(await classes.remove(params.class, params.person, 'tutor'))) throw noSuchThing();
      return classes.get(params.class);
    }),
  );
}

/** Classes: made, looked at, changed, erased. */
export function addClasses(app: FastifyInstance, service: Service): void {
  const { store } = service;
  const { classes } = store.people;
  const ofClass = classesOf(service);

  addRoute(app, service, peopleRoutes.classes, async ({ person }) => ({
    classes: await classes.list(person.role === 'admin' ? null : person.id),
  }));
  addRoute(app, service, peopleRoutes.newClass, ({ body, person }) =>
    classes.make(body.title, body.intake, person.id),
  );
  addRoute(app, service, peopleRoutes.class, ({ person, params }) =>
    ofClass(person, params.class, () => classes.get(params.class)),
  );
  addRoute(app, service, peopleRoutes.changeClass, ({ body, person, params }) =>
    ofClass(person, params.class, () => classes.change(params.class, body)),
  );
  addRoute(app, service, peopleRoutes.newCode, ({ person, params }) =>
    ofClass(person, params.class, () => classes.newCode(params.class)),
  );

  addRoute(app, service, peopleRoutes.eraseClass, async ({ params, query }) => {
    if (!(await classes.get(params.class))) throw noSuchThing();
    if (query.confirm !== params.class)
      throw new ApiFailure({ says: 'not-confirmed.class', id: params.class });
    await store.eraseClass(params.class);
    return { done: true };
  });
  addMembers(app, service);
}
