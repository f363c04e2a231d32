import type { FastifyRequest } from 'fastify';
import type { ApiRoute } from '../../../shared/api.ts';
import { peopleRoutes } from '../../../shared/api-people.ts';
import { type Role, role as roles } from '../../../shared/people.ts';
import type { People } from '../../store/index.ts';
import { ApiFailure } from '../problems.ts';
import { tokenIn } from './cookie.ts';
import type { Asking, Gate } from './gate.ts';
import type { Transport } from './transport.ts';

const rank = (role: Role): number => roles.options.indexOf(role);

/** Routes that tell nothing of anybody and need no sign-in: those of the server's own state. */
const isOpen = ({ role, mode, path }: ApiRoute): boolean =>
  role === 'nobody' && mode === undefined && path !== peopleRoutes.me.path;

/**
 * Whether it is asked in the name of somebody else than the one who is signed in. A page says whom it was opened for; in
 * another tab somebody else may have signed in since, and answers must not be kept under, nor shown to, the wrong one.
 */
function isForAnother({ headers }: FastifyRequest, person: string): boolean {
  const named = headers['polewise-person'];
  return named !== undefined && named !== person;
}

/** Where people sign in: who asks is known by the cookie of a session, looked up anew for each request. */
export function classGate(people: People, transport: Transport): Gate {
  const known = new WeakMap<FastifyRequest, Asking>();
  return {
    mode: 'class',
    async admit(request, route) {
      if (isOpen(route)) return;
      transport.checkSecure(request);
      const token = tokenIn(request);
      const there = token === null ? null : await people.sessions.holderOf(token);
      const holder = there && rank(route.role) > 0 && isForAnother(request, there.person) ? null : there;
      if (holder) known.set(request, { id: holder.person, role: holder.role, session: holder.session });
      if (rank(holder?.role ?? 'nobody') >= rank(route.role)) return;
      throw holder
        ? new ApiFailure({ says: 'not-yours', role: route.role })
        : new ApiFailure({ says: 'sign-in-first' });
    },
    personOf: (request) => known.get(request) ?? null,
  };
}
