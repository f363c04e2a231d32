/** Calls to the server by its contract, which is fetched with the first of them: practising doesn't wait for schemas. */
import type { z } from 'zod';
import type { ApiProblem, ApiProblemCode } from '../../shared/api-problem.ts';
import type { ApiRoute, FileReply } from '../../shared/api-route.ts';
import type { routes } from './api-contract.ts';
import { isFromNewer, renewed } from './renewed.ts';
import { words } from './words.ts';

type Routes = typeof routes;
export type RouteName = keyof Routes;
type FileRoute = { [N in RouteName]: Routes[N]['reply'] extends FileReply ? N : never }[RouteName];
type DataRoute = Exclude<RouteName, FileRoute>;

type Part<R, P extends string> = R extends { readonly [K in P]: infer S extends z.ZodType }
  ? Record<never, never> extends z.input<S>
    ? { readonly [K in P]?: z.input<S> }
    : { readonly [K in P]: z.input<S> }
  : unknown;
/** What a route takes: `params` of its path, `query`, `body`, each only where it has one. */
export type Takes<N extends RouteName> = Part<Routes[N], 'params'> &
  Part<Routes[N], 'query'> &
  Part<Routes[N], 'body'> & { readonly signal?: AbortSignal };
/** What it gives. */
export type Gives<N extends DataRoute> = Routes[N]['reply'] extends z.ZodType
  ? z.output<Routes[N]['reply']>
  : never;

type Asked<N extends RouteName> =
  Record<never, never> extends Takes<N> ? [take?: Takes<N>] : [take: Takes<N>];

/** What any route may take. */
interface Take {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string | number | boolean | undefined>>;
  readonly body?: unknown;
  readonly signal?: AbortSignal;
}

/** Why a call came to nothing, in words for a person; `hint` says what to do. */
export class ApiFailure extends Error {
  /** Null where the server wasn't reached: nobody answered, or something else did. */
  readonly code: ApiProblemCode | null;
  readonly hint: string;
  /** Seconds after which trying again makes sense, where the server says so. */
  readonly retryAfter: number | null;

  constructor(code: ApiFailure['code'], message: string, hint: string, retryAfter: number | null = null) {
    super(message);
    this.code = code;
    this.hint = hint;
    this.retryAfter = retryAfter;
  }
}

/** The server wasn't reached, or not understood. */
const unreached = ({ message, hint }: { readonly message: string; readonly hint: string }): ApiFailure =>
  new ApiFailure(null, message, hint);
const reasons = () => words('first').frame.server;

/** What went wrong and what to do, in words, whatever it was. */
export function wordsOf(error: unknown): string {
  if (error instanceof ApiFailure) return `${error.message} ${error.hint}`.trim();
  return error instanceof Error ? error.message : String(error);
}

let signedOut: () => void = () => undefined;
/** Has somebody told whenever the server says that nobody is signed in any more. */
export const whenSignedOut = (told: () => void): void => {
  signedOut = told;
};

let person: string | null = null;
/** From now on it is asked in this person's name: where somebody else is signed in meanwhile, the server refuses. */
export const askAs = (id: string | null): void => {
  person = id;
};
/** The header that says in whose name it is asked; on a machine of one's own it isn't looked at. */
export const inNameOf = (id: string | null): Readonly<Record<string, string>> =>
  id === null ? {} : { 'polewise-person': id };

const contract = (): Promise<typeof import('./api-contract.ts')> =>
  import('./api-contract.ts').then(
    (all) => all,
    () => {
      throw unreached(reasons().partMissing);
    },
  );

function addressOf(path: string, { params = {}, query = {} }: Take): string {
  const filled = path.replace(/:([a-z]+)/gi, (_, name: string) => encodeURIComponent(params[name] ?? ''));
  const pairs = Object.entries(query).flatMap(([name, value]) =>
    value === undefined ? [] : [[name, String(value)]],
  );
  return pairs.length > 0 ? `${filled}?${new URLSearchParams(pairs)}` : filled;
}

async function refusal(response: Response): Promise<ApiFailure> {
  const told = (await response.json().catch(() => undefined)) as Partial<ApiProblem> | undefined;
  if (typeof told?.code !== 'string' || typeof told.message !== 'string')
    return unreached(reasons().another(response.status));
  const seconds = Number(response.headers.get('retry-after'));
  return new ApiFailure(told.code, told.message, told.hint ?? '', seconds > 0 ? seconds : null);
}

async function send({ method, path }: ApiRoute, take: Take): Promise<Response> {
  const { body, signal } = take;
  const response = await fetch(addressOf(path, take), {
    method,
    headers: { ...inNameOf(person), ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    ...(signal ? { signal } : {}),
  }).catch((error: unknown) => {
    if (signal?.aborted) throw error;
    throw unreached(reasons().silent);
  });
  isFromNewer(response);
  if (response.ok) return response;
  const failure = await refusal(response);
  if (failure.code === 'sign-in-first') signedOut();
  throw failure;
}

/**
 * Asks the server: `call('class', { params: { class: id } })`.
 *
 * @throws ApiFailure with words for a person
 */
export async function call<N extends DataRoute>(name: N, ...[take]: Asked<N>): Promise<Gives<N>> {
  const { routes: all, readLoosely } = await contract();
  const route: ApiRoute = all[name];
  const response = await send(route, (take ?? {}) as Take);
  const value: unknown = await response.json().catch(() => undefined);
  const read = 'kind' in route.reply ? undefined : readLoosely(route.reply, value);
  if (read !== undefined) return read as Gives<N>;
  if (value !== undefined && isFromNewer(response)) renewed.value = 'too-old';
  throw unreached(reasons().unknown);
}

/**
 * Fetches a file and hands it to the browser to be kept under a name. Resolves when it is here.
 *
 * @throws ApiFailure with words for a person
 */
export async function save<N extends FileRoute | 'exportLearner'>(
  name: N,
  fileName: string,
  ...[take]: Asked<N>
): Promise<void> {
  const response = await send((await contract()).routes[name], (take ?? {}) as Take);
  const file = await response.blob().catch(() => {
    throw unreached(reasons().fileBroken);
  });
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // Some browsers begin to read only after the click has been dealt with.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
