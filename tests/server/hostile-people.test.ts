/** Whatever is sent to the routes of people: done, or refused in words, and never a fault. */
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ApiRoute } from '../../shared/api.ts';
import { apiProblem } from '../../shared/api.ts';
import { peopleRoutes } from '../../shared/api-people.ts';
import { Browser, type ClassServing, classServing, requestFor } from './class-serving.ts';
import { sampleFor } from './samples.ts';

let server: ClassServing;
beforeAll(async () => {
  server = await classServing();
});
afterAll(() => server.end());

/** Signing out and erasing would take the one who asks out of the test. */
const routes = Object.entries(peopleRoutes).filter(
  ([name]) =>
    !['signOut', 'erasePerson', 'changeRole', 'endOtherSessions', 'endSessionsOf', 'newLink'].includes(name),
) as readonly (readonly [name: string, route: ApiRoute])[];
const json = { 'content-type': 'application/json' };

const adminAsks = async (options: object) => {
  const browser = new Browser(server);
  const token = await server.store.people.sessions.begin(server.admin.person.id, 'a test');
  browser.cookie = `polewise_session=${token}`;
  return browser.ask(options);
};

describe('what is sent to the routes of people', () => {
  const word = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 60 }),
    fc.constantFrom(
      '',
      '\u0000',
      '\ud800',
      '../..',
      "' or 1=1 --",
      '%00',
      '__proto__',
      'x'.repeat(300),
      '=1+1',
    ),
  );
  /** A sample with one of its fields replaced by something else, or anything at all. */
  const bodyFor = (name: string): fc.Arbitrary<unknown> => {
    const sample = sampleFor(name).body ?? {};
    const value = fc.oneof(word, fc.jsonValue(), fc.array(word, { maxLength: 3 }), fc.constant(null));
    const spoilt = fc
      .tuple(fc.constantFrom(...Object.keys(sample), 'surprise'), value)
      .map(([field, replaced]) => ({ ...sample, [field]: replaced }));
    return fc.oneof({ weight: 4, arbitrary: spoilt }, { weight: 1, arbitrary: fc.jsonValue() });
  };
  const requests = fc.constantFrom(...routes).chain(([name, route]) =>
    fc.record({
      route: fc.constant(route),
      body: bodyFor(name),
      params: fc.record({ class: part(), person: part(), session: part() }),
      query: fc.oneof(
        fc.constant(sampleFor(name).query ?? ''),
        fc.webQueryParameters().map((text) => `?${text}`),
        word.map((text) => `?find=${encodeURIComponent(wellFormed(text))}`),
      ),
    }),
  );

  it('is done or refused in words, also to an administrator', async () => {
    await fc.assert(
      fc.asyncProperty(requests, async ({ route, body, params, query }) => {
        const reply = await adminAsks({
          ...requestFor(route, params, query),
          ...(route.body ? { payload: JSON.stringify(body) ?? 'null', headers: json } : {}),
        });
        expect(reply.statusCode).toBeLessThan(500);
        if (reply.statusCode >= 400) {
          expect(apiProblem.parse(reply.json()).message).not.toMatch(/\n\s+at |SQLITE|select /i);
          expect(Object.keys(reply.json()).sort()).toEqual(['code', 'hint', 'message']);
        }
      }),
      { numRuns: 600 },
    );
  });

  /** A part of an address: that of the class or the person there is, or something made up. */
  function part(): fc.Arbitrary<string> {
    return fc.oneof(
      fc.constant('nothing'),
      fc.webSegment().map((text) => text || 'x'),
      fc.constantFrom('%00', '%2e%2e', '%2F', 'x'.repeat(90), '__proto__', 'constructor'),
    );
  }

  it.each(['%00', '%0a', '%e2%80%ae'])('is refused where it has %s to find people by', async (text) => {
    const reply = await adminAsks(requestFor(peopleRoutes.people, {}, `?find=${text}`));
    expect([reply.statusCode, (reply.json() as { code: string }).code]).toEqual([400, 'bad-value']);
  });

  it('is refused when it is larger than the route takes, by whomever', async () => {
    for (const [name, route] of routes.filter(([, { body }]) => body)) {
      const reply = await adminAsks({
        ...requestFor(route, {}, sampleFor(name).query),
        payload: `"${'x'.repeat(5_000_000)}"`,
        headers: json,
      });
      expect([name, (reply.json() as { code: string }).code]).toEqual([name, 'body-too-large']);
    }
  });

  it('is refused when it names keys that would change the program', async () => {
    for (const [name, route] of routes.filter(([, { body }]) => body)) {
      const payload = '{"__proto__":{"polluted":true},"files":{"__proto__":"x"}}';
      const reply = await adminAsks({
        ...requestFor(route, {}, sampleFor(name).query),
        payload,
        headers: json,
      });
      expect([name, (reply.json() as { code: string }).code]).toEqual([name, 'bad-json']);
    }
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });
});

/** Without halves of characters, which no address can have. */
const wellFormed = (text: string): string => text.replace(/\p{Cs}/gu, '');
