/** A server that people sign in to, for a test: two classes with a tutor and a learner each, and an administrator. */
import type { InjectOptions } from 'fastify';
import { expect } from 'vitest';
import type { ApiRoute } from '../../shared/api.ts';
import type { ClassDetail, Person, PersonRole } from '../../shared/people.ts';
import { Passwords, type ServerOptions } from '../../src/server/index.ts';
import type { Store } from '../../src/store/index.ts';
import { NOW, type Reply, type ReplyOf, type Serving, serving } from './serving.ts';

/** Hashes that take no time; those of the program itself are measured elsewhere. */
export const quickPasswords = (): Passwords => new Passwords({ memoryCost: 8, timeCost: 1, parallelism: 1 });

/** Somebody with a browser: keeps the cookie as a browser does. */
export class Browser {
  readonly server: Serving;
  readonly headers: Readonly<Record<string, string>>;
  cookie = '';
  /** What remembers who has signed in on it. */
  device = '';

  constructor(server: Serving, headers: Readonly<Record<string, string>> = {}) {
    this.server = server;
    this.headers = headers;
  }

  async ask(options: InjectOptions): Promise<Reply> {
    const both = [this.cookie, this.device].filter((one) => one !== '');
    const cookie = both.length > 0 ? { cookie: both.join('; ') } : {};
    const reply = await this.server.ask({
      ...options,
      headers: { ...this.headers, ...cookie, ...options.headers },
    });
    for (const set of [reply.headers['set-cookie'] ?? []].flat()) {
      const own = set.split(';')[0]!;
      if (own.startsWith('polewise_device=')) this.device = own;
      else this.cookie = own;
    }
    return reply;
  }

  /** Asks a route of JSON; the address may have its parameters put in. */
  async call<R extends ApiRoute>(
    route: R,
    { body, query = '', params = {} }: Given = {},
  ): Promise<ReplyOf<R>> {
    const reply = await this.ask({ ...requestFor(route, params, query), ...payloadOf(body) });
    expect({ status: reply.statusCode, body: reply.body }).toMatchObject({ status: 200 });
    if ('kind' in route.reply) throw new Error('This route gives a file.');
    return route.reply.parse(reply.json()) as never;
  }

  /** Asks for what has to be refused; gives the code. */
  async refusedBy(route: ApiRoute, { body, query = '', params = {} }: Given = {}): Promise<string> {
    const reply = await this.ask({ ...requestFor(route, params, query), ...payloadOf(body) });
    expect(reply.statusCode).toBeGreaterThanOrEqual(400);
    return (reply.json() as { code: string }).code;
  }
}

interface Given {
  readonly body?: unknown;
  readonly query?: string;
  readonly params?: Readonly<Record<string, string>>;
}

const payloadOf = (body: unknown): Pick<InjectOptions, 'payload'> =>
  body === undefined ? {} : { payload: body as object };

/** The address of a route with its parameters put in. */
export const requestFor = (
  { method, path }: ApiRoute,
  params: Readonly<Record<string, string>>,
  query = '',
) => ({
  method,
  url: `${path.replaceAll(/:(\w+)/g, (_, name: string) => params[name] ?? 'nothing')}${query}`,
});

export interface Somebody {
  readonly person: Person;
  readonly browser: Browser;
}

export interface ClassServing extends Serving {
  readonly nobody: Browser;
  readonly admin: Somebody;
  readonly tutor: Somebody;
  readonly learner: Somebody;
  /** Of the other class. */
  readonly otherTutor: Somebody;
  readonly otherLearner: Somebody;
  readonly ownClass: ClassDetail;
  readonly otherClass: ClassDetail;
  somebody(name: string, role: PersonRole): Promise<Somebody>;
}

export const PASSWORD = 'nine potted ferns';

export async function classServing(
  options: Partial<ServerOptions> & {
    readonly now?: () => number;
    readonly wrap?: (store: Store) => Store;
  } = {},
): Promise<ClassServing> {
  const server = await serving({ class: {}, passwords: quickPasswords(), now: () => NOW, ...options });
  const { persons, sessions, classes } = server.store.people;
  const passwordHash = await quickPasswords().hash(PASSWORD);
  const somebody = async (name: string, role: PersonRole): Promise<Somebody> => {
    const person = (await persons.make({
      name,
      role,
      signIn: name.toLowerCase().replaceAll(' ', '.'),
      passwordHash,
    }))!;
    const browser = new Browser(server);
    browser.cookie = `polewise_session=${await sessions.begin(person.id, 'a test')}`;
    return { person, browser };
  };
  const admin = await somebody('Ada Office', 'admin');
  const tutor = await somebody('Tom Tutor', 'tutor');
  const otherTutor = await somebody('Tilda Tutor', 'tutor');
  const learner = await somebody('Lea Learner', 'learner');
  const otherLearner = await somebody('Lars Learner', 'learner');
  const classOf = async (title: string, of: Somebody, who: Somebody): Promise<ClassDetail> => {
    const { id, joiningCode } = await classes.make(title, 'Autumn', of.person.id);
    await server.store.people.joining.asKnown(joiningCode.replace('-', ''), who.person.id);
    return (await classes.get(id))!;
  };
  return {
    ...server,
    nobody: new Browser(server),
    admin,
    tutor,
    learner,
    otherTutor,
    otherLearner,
    ownClass: await classOf('Flour line', tutor, learner),
    otherClass: await classOf('Ice works', otherTutor, otherLearner),
    somebody,
  };
}
