/** What a route of the HTTP interface is. The routes themselves: api.ts, api-people.ts, joined in every-route.ts. */
import { z } from 'zod';
import type { ApiProblemCode } from './api-problem.ts';
import type { Role } from './people.ts';

export type ApiMethod = 'GET' | 'POST' | 'PUT' | 'DELETE';

/** A reply that isn't JSON, by its media types. */
export interface FileReply {
  readonly kind: 'file';
  readonly types: readonly string[];
}
export const fileReply = (...types: readonly string[]): FileReply => ({ kind: 'file', types });

/** One route: what it is for, who may call it, what it takes, what it gives, and how else it may refuse. */
export interface ApiRoute {
  readonly method: ApiMethod;
  /** `:name` stands for a part that `params` describes. */
  readonly path: string;
  /** For the description of the interface, in English as docs/api.md. */
  readonly summary: string;
  /** The least role that may call it. Where nobody signs in, everything that isn't of the class mode is open. */
  readonly role: Role;
  /** `class`: only there when people sign in. */
  readonly mode?: 'class';
  readonly params?: z.ZodObject;
  readonly query?: z.ZodObject;
  readonly body?: z.ZodType;
  readonly reply: z.ZodType | FileReply;
  /** Beside `commonProblems` and those of its role. */
  readonly problems: readonly ApiProblemCode[];
}

/** What was done, where there is nothing else to say. */
export const done = z.strictObject({ done: z.literal(true) });
