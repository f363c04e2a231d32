/** A server where people sign in, with one class of packers, a clock that is set by hand, and a small course. */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance, InjectOptions } from 'fastify';
import { expect } from 'vitest';
import type { z } from 'zod';
import type { ApiProblemCode, ApiRoute } from '../../../shared/api.ts';
import { homeworkRoutes } from '../../../shared/api-homework.ts';
import type { PaperView, SetView } from '../../../shared/homework-views.ts';
import type { PersonRole } from '../../../shared/people.ts';
import type { Answer } from '../../../shared/question.ts';
import { blankAnswer, rightAnswer } from '../../../src/questions/index.ts';
import { createServer } from '../../../src/server/index.ts';
import { API_PROBLEMS } from '../../../src/server/problems.ts';
import { workHere } from '../../../src/server/work/work.ts';
import { openStore, type Store, type StorePlace, storeFile } from '../../../src/store/index.ts';
import { english } from '../../../src/words/en/core.ts';
import { CLOSES, course, HOUR, OPENS } from '../../homework/course.ts';

type ReplyOf<R extends ApiRoute> = R['reply'] extends z.ZodType ? z.output<R['reply']> : never;

interface Asked {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: string;
  readonly body?: unknown;
}

/** Somebody who has signed in. */
export class Person {
  readonly id: string;
  readonly name: string;
  private readonly cookie: string;
  private readonly app: FastifyInstance;

  constructor(app: FastifyInstance, { id, name }: { id: string; name: string }, token: string) {
    this.app = app;
    this.id = id;
    this.name = name;
    this.cookie = `polewise_session=${token}`;
  }

  /** The same one, asking another server. */
  at(app: FastifyInstance): Person {
    return new Person(app, this, this.cookie.split('=')[1]!);
  }

  ask(route: Pick<ApiRoute, 'method' | 'path'>, { params = {}, query = '', body }: Asked = {}) {
    const url = route.path.replace(/:(\w+)/g, (_, name: string) => params[name]!);
    const options: InjectOptions = {
      method: route.method,
      url: `${url}${query}`,
      headers: { host: 'localhost:8024', cookie: this.cookie },
      ...(body === undefined ? {} : { payload: body as object }),
    };
    return this.app.inject(options);
  }

  /** Asks and gives the reply, which has to be of the contract's form. */
  async call<R extends ApiRoute>(route: R, asked: Asked = {}): Promise<ReplyOf<R>> {
    const reply = await this.ask(route, asked);
    expect(reply.statusCode === 200 ? '' : reply.body).toBe('');
    if ('kind' in route.reply) throw new Error('That route gives a file.');
    return route.reply.parse(reply.json()) as ReplyOf<R>;
  }

  /** Asks for a file. */
  async file(route: ApiRoute, asked: Asked = {}) {
    const reply = await this.ask(route, asked);
    expect(reply.statusCode === 200 ? '' : reply.body).toBe('');
    expect('types' in route.reply && route.reply.types).toContain(reply.headers['content-type']);
    expect(reply.headers['content-disposition']).toMatch(/^attachment; filename="[a-z0-9.-]+"$/);
    return reply;
  }

  /** Asks for something that has to be refused in this way. */
  async refused(route: ApiRoute, asked: Asked, code: ApiProblemCode): Promise<string> {
    const reply = await this.ask(route, asked);
    expect({ status: reply.statusCode, body: reply.json() }).toMatchObject({
      status: API_PROBLEMS[code].status,
      body: { code, message: expect.stringMatching(/\S/), hint: expect.stringMatching(/\S/) },
    });
    return (reply.json() as { message: string }).message;
  }
}

export interface ClassServing {
  readonly app: FastifyInstance;
  readonly store: Store;
  readonly clock: { now: number };
  readonly classId: string;
  readonly tutor: Person;
  readonly learners: readonly Person[];
  person(name: string, role: PersonRole): Promise<Person>;
  /** A set as wished, drafted and issued. */
  issued(changes?: object): Promise<SetView>;
  end(): Promise<void>;
}

export const wishOf = (changes: object = {}) => ({
  title: 'Week 40: status lamps',
  skills: ['status-lamps', 'controller-inputs'],
  items: 4,
  level: 'small',
  marksEach: 2,
  opensAt: OPENS,
  closesAt: CLOSES,
  attempts: 2,
  ...changes,
});

export const serverOn = (store: Store, clock: { readonly now: number }): Promise<FastifyInstance> =>
  createServer({
    store,
    words: english,
    bank: course.bank,
    folder: '/nowhere',
    version: '0.0.0-test',
    class: {},
    work: workHere,
    now: () => clock.now,
  });

export async function classServing(
  learners = 2,
  at?: StorePlace,
  beginning = OPENS + HOUR,
): Promise<ClassServing> {
  const folder = mkdtempSync(join(tmpdir(), 'polewise-class-'));
  const clock = { now: beginning };
  const store = await openStore(at ?? { kind: 'file', file: storeFile(folder) }, { now: () => clock.now });
  const app = await serverOn(store, clock);
  const person: ClassServing['person'] = async (name, role) => {
    const made = (await store.people.persons.make({ name, role }))!;
    return new Person(app, made, await store.people.sessions.begin(made.id, 'test'));
  };
  const tutor = await person('T. Fennel', 'tutor');
  const { id: classId, joiningCode } = await store.people.classes.make('Packers', null, tutor.id);
  const own: Person[] = [];
  for (let at = 1; at <= learners; at++) {
    const learner = await person(`Learner ${at}`, 'learner');
    await store.people.joining.asKnown(joiningCode.replace('-', ''), learner.id);
    own.push(learner);
  }
  return {
    app,
    store,
    clock,
    classId,
    tutor,
    learners: own,
    person,
    async issued(changes = {}) {
      const { set } = await tutor.call(homeworkRoutes.draftHomework, {
        params: { class: classId },
        body: wishOf(changes),
      });
      return tutor.call(homeworkRoutes.issueHomework, { params: { set: set.id } });
    },
    async end() {
      await app.close();
      await store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** Answers to every item of a paper, as the store knows its questions. */
export async function answersTo(
  { store }: Pick<ClassServing, 'store'>,
  { id }: Pick<PaperView, 'id'>,
  manner: 'right' | 'blank',
): Promise<{ id: string; item: number; answer: Answer; secondsUsed: number }[]> {
  const { paper } = (await store.homework.paper(id))!;
  return paper.items.map(({ question }, item) => ({
    id: `${manner}-${item}`,
    item,
    answer: manner === 'right' ? rightAnswer(question) : blankAnswer(question),
    secondsUsed: 30,
  }));
}
