import type { FastifyRequest } from 'fastify';
import type { ApiRoute } from '../../../shared/api.ts';
import type { PersonRole } from '../../../shared/people.ts';
import { ApiFailure } from '../problems.ts';

/** Who asks. */
export interface Asking {
  readonly id: string;
  readonly role: PersonRole;
  /** The session's own id, which is no secret; null where nobody has to sign in. */
  readonly session: string | null;
}

/** Lets requests in to a route, or refuses them, before anything of theirs is read but the headers. */
export interface Gate {
  readonly mode: 'solo' | 'class';
  /** Resolves when the one who asks may call this route; throws the refusal otherwise. */
  admit(request: FastifyRequest, route: ApiRoute): Promise<void>;
  /** Who asks, after the request was admitted; null where nobody has signed in. */
  personOf(request: FastifyRequest): Asking | null;
}

const WHOEVER: Asking = { id: 'me', role: 'learner', session: null };

/** On a machine of one's own nobody signs in: everything belongs to whoever sits at it. */
export const soloGate: Gate = {
  mode: 'solo',
  async admit(_request, { mode }) {
    if (mode === 'class') throw new ApiFailure({ says: 'no-such-route.whileSolo' });
  },
  personOf: () => WHOEVER,
};
