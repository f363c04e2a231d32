/** Who is let in to which route, held against the order of the roles. */
import { describe, expect, it } from 'vitest';
import { apiRoutes } from '../../../shared/api.ts';
import { peopleRoutes } from '../../../shared/api-people.ts';
import type { ApiRoute } from '../../../shared/api-route.ts';
import type { PersonRole, Role } from '../../../shared/people.ts';
import { classGate } from '../../../src/server/people/class-gate.ts';
import { soloGate } from '../../../src/server/people/gate.ts';
import { Transport } from '../../../src/server/people/transport.ts';
import type { People } from '../../../src/store/index.ts';
import { asked, outcome } from './asked.ts';

const ROLES: readonly Role[] = ['nobody', 'learner', 'tutor', 'admin'];
const tokenOf = (role: string): string => role.padEnd(43, '-');
const cookieOf = (role: string): string => `polewise_session=${tokenOf(role)}`;

/** Each role has one who is signed in with it. */
const people = {
  sessions: {
    holderOf: async (token: string) => {
      const role = token.replace(/-+$/, '');
      return role === 'gone' ? null : { session: `s-${role}`, person: `p-${role}`, role: role as PersonRole };
    },
  },
} as unknown as People;
const gate = () => classGate(people, new Transport());

const routeFor = (role: Role): ApiRoute => ({ ...apiRoutes.answers, role });
const from = (role: string, headers: Record<string, string> = {}) =>
  asked({ host: 'localhost:8024', ...(role === 'nobody' ? {} : { cookie: cookieOf(role) }), ...headers });

describe('where people sign in', () => {
  for (const who of ROLES)
    for (const needed of ROLES) {
      const enough = ROLES.indexOf(who) >= ROLES.indexOf(needed);
      const expected = enough ? 'let in' : who === 'nobody' ? 'sign-in-first' : 'not-yours';
      it(`${who} asking what ${needed} may ask: ${expected}`, async () => {
        const own = gate();
        const request = from(who);
        expect(await outcome(() => own.admit(request, routeFor(needed)))).toBe(expected);
      });
    }

  it('it is known who asks, with the session, and of another request nothing', async () => {
    const own = gate();
    const request = from('tutor');
    await own.admit(request, routeFor('learner'));
    expect(own.personOf(request)).toEqual({ id: 'p-tutor', role: 'tutor', session: 's-tutor' });
    expect(own.personOf(from('tutor'))).toBeNull();
    expect(own.mode).toBe('class');
  });

  it('it is told which role is needed', async () => {
    const refused = await gate()
      .admit(from('learner'), routeFor('admin'))
      .catch((error) => error.why);
    expect(refused).toEqual({ says: 'not-yours', role: 'admin' });
  });

  it('a session that has ended is nobody’s', async () => {
    expect(await outcome(() => gate().admit(from('gone'), routeFor('learner')))).toBe('sign-in-first');
  });

  it('a page that was opened for somebody else is refused, and one opened for who asks is not', async () => {
    const named = (person: string) => from('learner', { 'polewise-person': person });
    expect(await outcome(() => gate().admit(named('p-tutor'), routeFor('learner')))).toBe('sign-in-first');
    expect(await outcome(() => gate().admit(named('p-learner'), routeFor('learner')))).toBe('let in');
  });

  it('whoever is signed in may ask what needs no role, also from a page of somebody else, and is known', async () => {
    const own = gate();
    const request = from('learner', { 'polewise-person': 'p-tutor' });
    expect(await outcome(() => own.admit(request, peopleRoutes.me))).toBe('let in');
    expect(own.personOf(request)?.id).toBe('p-learner');
  });

  it('the state of the server is told without a secure connection, and nothing of anybody is', async () => {
    const far = (role: string) => from(role, { host: 'practice.example' });
    expect(await outcome(() => gate().admit(far('learner'), apiRoutes.health))).toBe('let in');
    for (const route of [peopleRoutes.me, peopleRoutes.signIn, routeFor('learner')])
      expect(await outcome(() => gate().admit(far('learner'), route))).toBe('not-secure');
  });

  it('who asks for the state of the server isn’t looked up', async () => {
    const own = gate();
    const request = from('learner');
    await own.admit(request, apiRoutes.health);
    expect(own.personOf(request)).toBeNull();
  });
});

describe('on a machine of one’s own', () => {
  it('everything but what a class needs is open to whoever sits at it', async () => {
    expect(await outcome(() => soloGate.admit(asked(), routeFor('admin')))).toBe('let in');
    expect(await outcome(() => soloGate.admit(asked(), peopleRoutes.classes))).toBe(
      'no-such-route.whileSolo',
    );
    expect(soloGate.personOf(asked())).toEqual({ id: 'me', role: 'learner', session: null });
    expect(soloGate.mode).toBe('solo');
  });
});
