import type { FastifyInstance, FastifyReply, FastifyRequest, RouteOptions } from 'fastify';
import { z } from 'zod';
import type { ApiRoute } from '../../shared/api.ts';
import { issueText } from './failure-of.ts';
import { ApiFailure } from './problems.ts';

type ValueOf<S> = S extends z.ZodType ? z.output<S> : undefined;

/** What a handler is given: checked, and typed by the contract. */
export interface Given<R extends ApiRoute, B> {
  readonly query: ValueOf<R['query']>;
  readonly body: B;
  readonly request: FastifyRequest;
  readonly reply: FastifyReply;
}

export interface RouteManner<B> {
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

function checked(schema: z.ZodType, value: unknown, what: string): unknown {
  const reading = schema.safeParse(value);
  if (reading.success) return reading.data;
  throw new ApiFailure(
    'bad-value',
    `The ${what} is not of the form wanted. ${issueText(reading.error)}`,
    'docs/api.md and /api/openapi.json say what this route takes.',
  );
}

/** Adds a route of the contract. Its query and body are checked here and nowhere else. */
export function addRoute<const R extends ApiRoute, B = ValueOf<R['body']>>(
  app: FastifyInstance,
  route: R,
  handler: (given: Given<R, B>) => unknown,
  { bodyLimit = 16_384, body: ownBody }: RouteManner<B> = {},
): void {
  const body = ownBody ?? route.body;
  const options: RouteOptions = {
    method: route.method,
    url: route.path,
    bodyLimit,
    handler: (request, reply) => {
      const query = route.query
        ? checked(route.query, withNumbers(route.query, request.query as Record<string, unknown>), 'query')
        : undefined;
      const value = body ? checked(body, request.body, 'body') : undefined;
      return handler({ query: query as ValueOf<R['query']>, body: value as B, request, reply });
    },
  };
  app.route(options);
}
