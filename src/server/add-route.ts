import type { FastifyInstance, FastifyReply, FastifyRequest, RouteOptions } from 'fastify';
import { z } from 'zod';
import type { ApiRoute } from '../../shared/api.ts';
import { formSaid } from '../words/form-said.ts';
import { firstWrong } from './first-wrong.ts';
import type { Asking, Gate } from './people/gate.ts';
import { ApiFailure, noSuchThing } from './problems.ts';
import { inTurnsFromNow } from './turns.ts';

type ValueOf<S> = S extends z.ZodType ? z.output<S> : undefined;

/** What a handler is given: checked, and typed by the contract. */
export interface Given<R extends ApiRoute, B> {
  /** Who asks, who may call this route. */
  readonly person: R['role'] extends 'nobody' ? Asking | null : Asking;
  readonly params: ValueOf<R['params']>;
  readonly query: ValueOf<R['query']>;
  readonly body: B;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
}

export interface RouteSettings<B> {
  /** Bytes that the body may have; 16 KiB unless it is given. */
  readonly bodyLimit?: number;
  /** How the body is checked, where that isn't the contract's own schema. */
  readonly body?: z.ZodType<B>;
}

const wantsNumber = (schema: unknown): boolean => {
  if (schema instanceof z.ZodDefault || schema instanceof z.ZodOptional) return wantsNumber(schema.unwrap());
  return schema instanceof z.ZodNumber;
};

/** A query comes as texts; where a number is wanted, digits become one. */
function withNumbers(schema: z.ZodObject, query: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(query).map(([key, value]) => [
      key,
      typeof value === 'string' && /^\d{1,15}$/.test(value) && wantsNumber(schema.shape[key])
        ? Number(value)
        : value,
    ]),
  );
}

type What = 'body' | 'query';

function checked(schema: z.ZodType, value: unknown, what: What): unknown {
  const reading = schema.safeParse(value);
  if (reading.success) return reading.data;
  throw new ApiFailure({ says: `bad-value.${what}`, form: formSaid(reading.error.issues[0]!, value) });
}

/** What was sent may be large: others get their turn while it is looked at. */
async function checkedInTurns(schema: z.ZodType, value: unknown, what: What): Promise<unknown> {
  const wrong = await inTurnsFromNow(firstWrong(schema, value));
  if (wrong) throw new ApiFailure({ says: `bad-value.${what}`, form: formSaid(wrong, value) });
  return checked(schema, value, what);
}

/** An address whose parts can't be names of anything. */
function paramsOf(schema: z.ZodObject, params: unknown): unknown {
  const reading = schema.safeParse(params);
  if (reading.success) return reading.data;
  throw noSuchThing();
}

/**
 * Adds a route of the contract. Whether the one who asks may call it is looked at before its body is read; parameters,
 * query and body are checked here and nowhere else.
 */
export function addRoute<const R extends ApiRoute, B = ValueOf<R['body']>>(
  app: FastifyInstance,
  gate: Gate,
  route: R,
  handler: (given: Given<R, B>) => unknown,
  { bodyLimit = 16_384, body: ownBody }: RouteSettings<B> = {},
): void {
  const body = ownBody ?? route.body;
  const options: RouteOptions = {
    method: route.method,
    url: route.path,
    bodyLimit,
    onRequest: (request) => gate.admit(request, route),
    handler: async (request, reply) => {
      const params = route.params ? paramsOf(route.params, request.params) : undefined;
      const query = route.query
        ? checked(route.query, withNumbers(route.query, request.query as Record<string, unknown>), 'query')
        : undefined;
      const value = body ? await checkedInTurns(body, request.body, 'body') : undefined;
      return handler({
        person: gate.personOf(request) as Given<R, B>['person'],
        params: params as ValueOf<R['params']>,
        query: query as ValueOf<R['query']>,
        body: value as B,
        request,
        reply,
      });
    },
  };
  app.route(options);
}
