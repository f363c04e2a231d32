import { constants } from 'node:zlib';
import compress from '@fastify/compress';
import Fastify, { type FastifyInstance, type FastifyReply, type FastifyRequest } from 'fastify';
import { type ApiMethod, type ApiProblem, type ApiRoute, apiRoutes } from '../../shared/api.ts';
import type { Bank } from '../../shared/bank.ts';
import { everyRoute } from '../../shared/every-route.ts';
import { type Course, courseOf } from '../practice/index.ts';
import type { Store } from '../store/index.ts';
import type { Words } from '../words/index.ts';
import { addRoute } from './add-route.ts';
import { repliesToClientErrors } from './client-error.ts';
import { apiFailureOf, problemTold } from './failure-of.ts';
import { Guard } from './homework/guard.ts';
import { Intake } from './intake.ts';
import { addJsonBodies } from './json-body.ts';
import { openApi } from './openapi.ts';
import { checkHost, checkSite } from './own-site.ts';
import { addPage } from './page.ts';
import { classGate } from './people/class-gate.ts';
import { soloGate } from './people/gate.ts';
import { Passwords } from './people/passwords.ts';
import { Transport, type TransportOptions } from './people/transport.ts';
import { ApiFailure } from './problems.ts';
import { addAnswers } from './routes/answers.ts';
import { addBank } from './routes/bank.ts';
import { addHomework } from './routes/homework/index.ts';
import { addLearner } from './routes/learner.ts';
import { addPeople } from './routes/people/index.ts';
import { addState } from './routes/state.ts';
import { SAFE_HEADERS } from './safe-headers.ts';
import type { Service } from './service.ts';
import { WorkThreads } from './work/threads.ts';
import type { Work } from './work/work.ts';

export type LogLevel = 'silent' | 'error' | 'warn' | 'info' | 'debug';

export interface ServerOptions {
  readonly store: Store;
  readonly bank: Bank;
  /** What the server tells, in the language of those who use it. */
  readonly words: Words;
  /** Where the built page is; an explanation is shown when it isn't there. */
  readonly folder: string;
  readonly version: string;
  /** Host names that the server answers to, beside those of the loopback. */
  readonly hosts?: readonly string[];
  /** People sign in. Without it everything belongs to whoever sits at the machine. */
  readonly class?: TransportOptions;
  /** How passwords are hashed; as they should be unless it is given. */
  readonly passwords?: Passwords;
  /** Where long work is done; in threads of the server's own unless it is given. */
  readonly work?: Work;
  /** Milliseconds since 1970; the machine's clock unless it is given. */
  readonly now?: () => number;
  /** What is logged, as JSON lines; nothing unless it is given. */
  readonly log?: { readonly level: LogLevel; readonly stream?: { write(line: string): void } };
}

/** A browser that came by https comes by https for a year; other names of the same domain are not this server's. */
const HSTS = 'max-age=31536000';

/** Milliseconds for a request to arrive, and how often it is looked whether one is late: a late one ends within both. */
const ARRIVES_WITHIN = 25_000;
const LOOKED_EVERY = 5_000;

const path = ({ url }: FastifyRequest): string => url.split('?')[0]!;

const sendProblem = (reply: FastifyReply, status: number, problem: ApiProblem): FastifyReply =>
  reply
    .code(status)
    .headers(SAFE_HEADERS)
    .type('application/json; charset=utf-8')
    .send(JSON.stringify(problem));

function courseFrom(bank: Bank): Course {
  const course = courseOf(bank);
  if (!course.ok) throw new Error(course.problems.map(({ code }) => code).join(' '));
  return course.value;
}

/** Whether an address is one of this route's. */
const isAt = (route: ApiRoute, address: string): boolean => {
  const [wanted, given] = [route.path.split('/'), address.split('/')];
  return (
    wanted.length === given.length &&
    wanted.every((part, at) => (part.startsWith(':') ? given[at] !== '' : part === given[at]))
  );
};

/** What no route answers: the page's own addresses, a method that the route hasn't got, or nothing at all. */
function missing(request: FastifyRequest): ApiFailure {
  const methods = (Object.values(everyRoute) as readonly ApiRoute[])
    .filter((route) => isAt(route, path(request)))
    .map(({ method }): ApiMethod => method);
  if (methods.length > 0)
    return new ApiFailure({ says: 'wrong-method', method: request.method, possible: methods });
  return new ApiFailure({ says: 'no-such-route' });
}

/** What takes requests in: what it bears with, and what it says to what is no request. */
function listener({ words, log }: ServerOptions) {
  return Fastify({
    logger: log && log.level !== 'silent' ? { ...log } : false,
    bodyLimit: 16_384,
    requestTimeout: ARRIVES_WITHIN,
    http: { headersTimeout: ARRIVES_WITHIN, connectionsCheckingInterval: LOOKED_EVERY },
    return503OnClosing: false,
    exposeHeadRoutes: true,
    onProtoPoisoning: 'error',
    onConstructorPoisoning: 'error',
    clientErrorHandler: repliesToClientErrors(words),
    frameworkErrors: (error, _request, reply) => {
      const failure = apiFailureOf(error);
      return sendProblem(reply as FastifyReply, failure.status, failure.told(words));
    },
  });
}

/** What every request is looked at for before its route, and what every reply has. */
function addManners(
  app: FastifyInstance,
  { transport, isStopping }: Service,
  names: readonly string[],
): void {
  const hosts = new Set(names.map((name) => name.toLowerCase()));
  app.addHook('onRequest', async (request, reply) => {
    reply.headers(SAFE_HEADERS);
    if (transport.isHttps(request)) reply.header('strict-transport-security', HSTS);
    checkHost(request.headers, hosts);
    const isApi = path(request).startsWith('/api/');
    if (isApi) reply.header('cache-control', 'no-store');
    if (isApi || (request.method !== 'GET' && request.method !== 'HEAD')) checkSite(request.headers);
    if (isStopping() && path(request) !== apiRoutes.health.path) throw new ApiFailure({ says: 'stopping' });
  });
  app.addHook('onSend', async (_request, reply) => {
    // A connection that stayed open would hold up the end.
    if (isStopping()) reply.header('connection', 'close');
  });
}

/** What went wrong, in words, and what of it is logged. */
function addErrors(app: FastifyInstance, { mode, words }: Service): void {
  app.setErrorHandler((error, request, reply) => {
    const failure = apiFailureOf(error);
    // Whoever hung up in the middle of a request gets no reply, and nothing is wrong here.
    if (request.raw.destroyed && !request.raw.complete)
      request.log.info({ reason: 'hung up' }, 'request aborted');
    else if (failure.status >= 500) request.log.error(error);
    const retryAfter = failure.retryAfter ?? (failure.status === 503 ? 5 : null);
    if (retryAfter !== null) reply.header('retry-after', String(retryAfter));
    return sendProblem(reply, failure.status, problemTold(mode, failure, words));
  });
}

/** Everything under /api. */
function addApi(app: FastifyInstance, service: Service): void {
  addState(app, service);
  addBank(app, service);
  addAnswers(app, service);
  addLearner(app, service);
  addPeople(app, service);
  addHomework(app, service);
  let description: unknown;
  addRoute(app, service, apiRoutes.description, ({ reply }) => {
    description ??= openApi(service.version);
    return reply.header('cache-control', 'no-cache').send(description);
  });
}

/**
 * The server, not yet listening. It doesn't own the store: close that after it.
 *
 * On `close()` requests that have begun are finished, further ones on open connections are refused.
 */
export async function createServer(options: ServerOptions): Promise<FastifyInstance> {
  const { store, bank, words, version } = options;
  const transport = new Transport(options.class);
  const app = listener(options);
  let stopping = false;
  const work = options.work ?? new WorkThreads();
  app.addHook('onClose', () => work.close());
  const now = options.now ?? Date.now;
  const service: Service = {
    store,
    bank,
    course: courseFrom(bank),
    words,
    version,
    now,
    guard: new Guard(store, now),
    intake: new Intake(store, options.class ? 'person' : 'anybody'),
    ...(options.class ? classGate(store.people, transport) : soloGate),
    passwords: options.passwords ?? new Passwords(),
    transport,
    work,
    isStopping: () => stopping,
  };

  app.removeContentTypeParser('text/plain');
  addJsonBodies(app);
  app.addHook('preClose', async () => {
    stopping = true;
  });
  addManners(app, service, options.hosts ?? []);
  addErrors(app, service);

  await app.register(compress, {
    threshold: 2048,
    encodings: ['br', 'gzip'],
    // The library's usual quality takes ten times as long for a tenth less.
    brotliOptions: { params: { [constants.BROTLI_PARAM_QUALITY]: 4 } },
  });
  addApi(app, service);
  const page = await addPage(app, options.folder, words);
  app.setNotFoundHandler((request, reply) => {
    const replied = page.reply(request, reply);
    if (replied) return replied;
    throw missing(request);
  });
  return app;
}
