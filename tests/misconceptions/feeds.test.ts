/** What feeds a load, against every way from a pole to it, walked one by one. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { feedsOf } from '../../src/misconceptions/feeds.ts';
import { machineOf, type Plan, planOf } from '../../src/solver/index.ts';
import { circuitOf } from '../support/written.ts';

/**
 * Every way from a line pole to one of the load's nodes that comes to no node twice and passes no pole or return: its
 * switches, in order.
 */
function waysTo(plan: Plan, load: number): number[][] {
  const lines = new Set(plan.supplies.flatMap(({ poles }) => poles.slice(0, -1).map(({ node }) => node)));
  const returns = new Set(plan.supplies.map(({ poles }) => poles.at(-1)!.node));
  const links = [
    ...plan.switches.map(({ a, b }, index) => ({ a, b, index })),
    ...plan.joins.map(([a, b]) => ({ a, b, index: -1 })),
  ];
  const found: number[][] = [];
  const walk = (here: number, goal: number, seen: readonly number[], used: readonly number[]): void => {
    if (here === goal) {
      found.push(used.filter((index) => index >= 0));
      return;
    }
    for (const { a, b, index } of links) {
      if (a !== here && b !== here) continue;
      const there = a === here ? b : a;
      if (seen.includes(there) || returns.has(there) || lines.has(there)) continue;
      walk(there, goal, [...seen, there], [...used, index]);
    }
  };
  for (const goal of [plan.loads[load]!.a, plan.loads[load]!.b]) {
    if (returns.has(goal) || lines.has(goal)) continue;
    for (const line of lines) walk(line, goal, [line], []);
  }
  return found;
}

/** Two supplies of one and two line poles, and whatever contacts and joins lie between a few nodes. */
const plans = fc
  .record({
    nodes: fc.integer({ min: 6, max: 10 }),
    links: fc.array(fc.tuple(fc.nat(99), fc.nat(99), fc.nat(3)), { maxLength: 11 }),
    joins: fc.array(fc.tuple(fc.nat(99), fc.nat(99)), { maxLength: 2 }),
    loads: fc.array(fc.tuple(fc.nat(99), fc.nat(99)), { minLength: 1, maxLength: 4 }),
  })
  .map(({ nodes, links, joins, loads }) => {
    const node = (any: number): number => any % nodes;
    const last = nodes - 1;
    return {
      nodes,
      supplies: [
        { poles: [{ node: last }, { node: last - 1 }] },
        { poles: [{ node: last - 2 }, { node: last - 3 }, { node: last - 4 }] },
      ],
      switches: links.map(([a, b, mechanism]) => ({ a: node(a), b: node(b), mechanism: mechanism - 1 })),
      joins: joins.map(([a, b]) => [node(a), node(b)]),
      loads: loads.map(([a, b]) => ({ a: node(a), b: node(b) })),
      mechanisms: [{}, {}, {}],
    } as unknown as Plan;
  });

const sorted = (of: Iterable<number>): number[] => [...of].sort((one, other) => one - other);

describe('what feeds a load', () => {
  it('is on some way from a pole to it, on random networks', () => {
    let some = 0;
    fc.assert(
      fc.property(plans, (plan) => {
        const feeds = feedsOf(plan);
        plan.loads.forEach((_, load) => {
          const ways = waysTo(plan, load);
          const expected = sorted(new Set(ways.flat()));
          expect(sorted(feeds.ofLoad(load))).toEqual(expected);
          const mechanisms = expected.map((index) => plan.switches[index]!.mechanism);
          expect(sorted(feeds.mechanismsOf(load))).toEqual(
            sorted(new Set(mechanisms.filter((mechanism) => mechanism >= 0))),
          );
          some += expected.length;
        });
      }),
      { numRuns: 400 },
    );
    expect(some).toBeGreaterThan(400);
  });

  it('lies in groups one after the other, and what is in series every way goes through, in that order', () => {
    let inSeries = 0;
    let beside = 0;
    fc.assert(
      fc.property(plans, (plan) => {
        const feeds = feedsOf(plan);
        plan.loads.forEach(({ a }, load) => {
          // From one end only, so that there is one order.
          const one = { ...plan, loads: plan.loads.map((each) => ({ ...each, b: a })) };
          const ways = waysTo(one, load);
          const groups = feedsOf(one).groupsOf(load);
          const everywhere = (ways[0] ?? []).filter((index) => ways.every((way) => way.includes(index)));
          const half = groups.slice(0, groups.length / 2);
          const series = half.flatMap(({ switches, series }) => (series ? switches : []));
          expect(series).toEqual(everywhere);
          inSeries += series.length;
          beside += half.length - series.length;
          expect(sorted(new Set(feeds.groupsOf(load).flatMap(({ switches }) => switches)))).toEqual(
            sorted(feeds.ofLoad(load)),
          );
        });
      }),
      { numRuns: 400 },
    );
    expect(Math.min(inSeries, beside)).toBeGreaterThan(50);
  });

  it('is not what hangs on the same conductor and leads elsewhere, nor what lies behind the load', () => {
    const plan = planOf(
      circuitOf(`
# Ice works: -S1 and -S2 in a bridge, -S3 leads elsewhere, -S4 lies in the return
supply A 24 V AC
-F1 breaker
-S1 push-button make
-S2 push-button make
-S3 push-button make
-S4 push-button make
-K1 relay
-K2 relay
-H1 lamp
A:L -F1:1-2 -S1:13-14 -K1:A1-A2 -S4:13-14 A:N
-F1:2 -S2:13-14 -S1:14
-F1:2 -S3:13-14 -K2:A1-A2 A:N
-S1:14 -K2:11-14 -H1:X1-X2 A:N`),
    );
    const feeding = (id: string): string[] => {
      const load = plan.loads.findIndex((one) => one.id === id);
      const { ofLoad } = feedsOf(plan);
      return ofLoad(load)
        .map((index) => `${plan.switches[index]!.device}:${plan.switches[index]!.to}`)
        .sort();
    };
    expect(feeding('-K1')).toEqual(['-F1:2', '-S1:14', '-S2:14']);
    expect(feeding('-K2')).toEqual(['-F1:2', '-S3:14']);
    expect(feeding('-H1')).toEqual(['-F1:2', '-K2:14', '-S1:14', '-S2:14']);
  });

  it('is worked out once for a plan', () => {
    const { plan } = machineOf(planOf(circuitOf('supply A 24 V AC\n-H1 lamp\nA:L -H1:X1-X2 A:N')));
    expect(feedsOf(plan)).toBe(feedsOf(plan));
    expect(feedsOf(plan).ofLoad(0)).toEqual([]);
    expect(feedsOf(plan).ofLoad(0)).toBe(feedsOf(plan).ofLoad(0));
  });
});
