/** Every route with what there is to ask it for: a class with a paper begun, and people who may. */
import type { ApiRoute } from '../../shared/api.ts';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import { everyRoute } from '../../shared/every-route.ts';
import type { ServerOptions } from '../../src/server/index.ts';
import { course } from '../homework/course.ts';
import {
  Browser,
  type ClassServing,
  classServing,
  requestFor,
  type Somebody,
} from '../server/class-serving.ts';
import { SAMPLES, sampleFor } from '../server/samples.ts';
import { NOW } from '../server/serving.ts';

export type NamedRoute = readonly [name: string, route: ApiRoute];

export const routes = Object.entries(everyRoute) as readonly NamedRoute[];

export interface AtWork {
  readonly server: ClassServing;
  /** What belongs to the class, by the names that parameters have. */
  readonly owned: Readonly<Record<string, string>>;
  /** A browser of somebody who may use the route, signed in for this once: some requests end a session. */
  browserFor(route: ApiRoute): Promise<Browser>;
  /** The route's request as it would be granted, or refused for what it asks alone. */
  request(named: NamedRoute): { method: ApiRoute['method']; url: string; payload?: object };
  /** Everything there is, to be held against what there is afterwards. */
  everything(): Promise<unknown>;
}

export async function atWork(options: Partial<ServerOptions> = {}): Promise<AtWork> {
  const server = await classServing({ bank: course.bank, now: () => NOW, ...options });
  const { tutor, learner, ownClass, store } = server;
  const draft = { params: { class: ownClass.id }, body: SAMPLES.draftHomework?.body };
  const { set } = await tutor.browser.call(homeworkRoutes.draftHomework, draft);
  await tutor.browser.call(homeworkRoutes.issueHomework, { params: { set: set.id } });
  const paper = await learner.browser.call(homeworkRoutes.beginPaper, { params: { set: set.id } });
  const [session] = await store.people.sessions.list(learner.person.id);
  const owned = {
    class: ownClass.id,
    person: learner.person.id,
    set: set.id,
    paper: paper.id,
    session: session!.id,
  };
  const asked: Readonly<Record<string, Somebody>> = { learner, tutor, admin: server.admin };
  return {
    server,
    owned,
    async browserFor({ role }) {
      const { person } = asked[role] ?? server.admin;
      const browser = new Browser(server);
      browser.cookie = `polewise_session=${await store.people.sessions.begin(person.id, 'a test')}`;
      return browser;
    },
    request([name, route]) {
      const { body, query = '' } = sampleFor(name);
      return { ...requestFor(route, owned, query), ...(body ? { payload: body } : {}) };
    },
    everything: async () => ({
      people: await store.people.persons.find('', 0, 100),
      detail: await store.people.classes.get(owned.class),
      sets: await store.homework.setsOf([owned.class]),
      papers: await store.homework.papersIn([owned.set]),
      saved: await store.homework.answersOf(owned.paper),
      hints: await store.homework.hintsOf(owned.paper),
    }),
  };
}
