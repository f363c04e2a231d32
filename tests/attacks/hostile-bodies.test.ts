/** Whatever is sent where people sign in: done, or refused in words, and never a fault. */
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ApiRoute, apiProblem } from '../../shared/api.ts';
import { peopleRoutes } from '../../shared/api-people.ts';
import { requestFor } from '../server/class-serving.ts';
import { sampleFor } from '../server/samples.ts';
import { type AtWork, atWork, routes as everyRoute } from './every-route.ts';

let at: AtWork;
beforeAll(async () => {
  at = await atWork();
});
afterAll(() => at.server.end());

/** Signing out and erasing would take the one who asks out of the test; prints and packages take nothing but their address. */
const LEFT_OUT = ['signOut', 'eraseLearner', 'erasePerson', 'eraseClass', 'changeRole'];
const ENDING = ['endOtherSessions', 'endSessionsOf', 'newLink'];
const routes = everyRoute.filter(
  ([name, { reply, body }]) =>
    ![...LEFT_OUT, ...ENDING].includes(name) &&
    (body !== undefined || !('kind' in reply) || name in peopleRoutes),
);
const takingBodies = routes.filter(([, { body }]) => body);
const json = { 'content-type': 'application/json' };

const asks = async (route: ApiRoute, options: object) => (await at.browserFor(route)).ask(options);

describe('what is sent', () => {
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
    // And with something inside it replaced, however deep.
    const inside = fc.tuple(fc.nat(), value).map(([place, replaced]) => replacedAt(sample, place, replaced));
    return fc.oneof(
      { weight: 3, arbitrary: spoilt },
      { weight: 3, arbitrary: inside },
      { weight: 1, arbitrary: fc.jsonValue() },
    );
  };
  const requests = fc.constantFrom(...routes).chain(([name, route]) =>
    fc.record({
      route: fc.constant(route),
      body: bodyFor(name),
      // Mostly of what there is, so that the form alone doesn't turn it away.
      params: fc.oneof(
        { weight: 2, arbitrary: fc.constantFrom(0).map(() => at.owned) },
        {
          weight: 1,
          arbitrary: fc.record({
            class: part(),
            person: part(),
            session: part(),
            set: part(),
            paper: part(),
          }),
        },
      ),
      query: fc.oneof(
        fc.constant(sampleFor(name).query ?? ''),
        fc.webQueryParameters().map((text) => `?${text}`),
        word.map((text) => `?find=${encodeURIComponent(wellFormed(text))}`),
      ),
    }),
  );

  it('is done or refused in words, to those who may use the route', async () => {
    await fc.assert(
      fc.asyncProperty(requests, async ({ route, body, params, query }) => {
        const reply = await asks(route, {
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
    const reply = await asks(peopleRoutes.people, requestFor(peopleRoutes.people, {}, `?find=${text}`));
    expect([reply.statusCode, (reply.json() as { code: string }).code]).toEqual([400, 'bad-value']);
  });

  it('is refused when it is larger than the route takes, by whomever', async () => {
    for (const [name, route] of takingBodies) {
      const reply = await asks(route, {
        ...requestFor(route, at.owned, sampleFor(name).query),
        payload: `"${'x'.repeat(5_000_000)}"`,
        headers: json,
      });
      expect([name, (reply.json() as { code: string }).code]).toEqual([name, 'body-too-large']);
    }
  });

  it('is refused when it names keys that would change the program', async () => {
    for (const [name, route] of takingBodies) {
      const payload = '{"__proto__":{"polluted":true},"files":{"__proto__":"x"}}';
      const reply = await asks(route, {
        ...requestFor(route, at.owned, sampleFor(name).query),
        payload,
        headers: json,
      });
      expect([name, (reply.json() as { code: string }).code]).toEqual([name, 'bad-json']);
    }
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });
});

/** A value with what stands at one of its places replaced; places are counted through everything that is in it. */
function replacedAt(value: unknown, place: number, by: unknown): unknown {
  const places: (readonly [within: Record<string, unknown>, key: string])[] = [];
  const whole = structuredClone(value);
  const open: unknown[] = [whole];
  for (const one of open) {
    if (typeof one !== 'object' || one === null) continue;
    for (const [key, inner] of Object.entries(one)) {
      places.push([one as Record<string, unknown>, key]);
      open.push(inner);
    }
  }
  if (places.length === 0) return by;
  const [within, key] = places[place % places.length]!;
  within[key] = by;
  return whole;
}

/** Without halves of characters, which no address can have. */
const wellFormed = (text: string): string => text.replace(/\p{Cs}/gu, '');
