/** A rule of practice that has to be solved: two that lock each other out are never operated together, even if one sticks. */

import type { Act } from '../../shared/scenario.ts';
import { actSaid, type DrawingRule } from '../circuit/index.ts';
import { Joining } from '../graph/index.ts';
import { actsToTry } from './acts-to-try.ts';
import type { Machine } from './machine.ts';
import { moversOf } from './movers.ts';
import type { Plan, PlanSwitch } from './plan.ts';
import { type Plant, plantOf } from './plant.ts';
import { OPERATED, walkPlant } from './plant-walk.ts';
import { begin } from './play.ts';
import { variantOf } from './variant.ts';
import { whereFed } from './where-fed.ts';

/** The circuit with every contact able to close, its returns left out: what a coil can be fed by. */
class Ways {
  private readonly plan: Plan;
  private readonly live: ReadonlySet<number>;
  private readonly returns: ReadonlySet<number>;
  /** Those that are on a way to some coil, and not on one to a lamp alone. */
  private readonly switches: readonly PlanSwitch[];

  constructor(plan: Plan) {
    this.plan = plan;
    const poles = plan.supplies.map((supply) => supply.poles);
    this.live = new Set(poles.flatMap((each) => each.slice(0, -1).map(({ node }) => node)));
    this.returns = new Set(poles.map((each) => each.at(-1)!.node));
    this.switches = this.towardsCoils();
  }

  private towardsCoils(): PlanSwitch[] {
    const { nodes, loads, joins } = this.plan;
    const coils = loads.flatMap(({ a, b, mechanism }) => (mechanism >= 0 ? [a, b] : []));
    const held = new Set([...this.live, ...joins.flat(), ...coils]);
    let left = this.plan.switches.filter(({ a, b }) => !this.returns.has(a) && !this.returns.has(b));
    for (;;) {
      const degree = new Int32Array(nodes);
      for (const { a, b } of left) {
        degree[a] = degree[a]! + 1;
        degree[b] = degree[b]! + 1;
      }
      const kept = left.filter(({ a, b }) => [a, b].every((node) => degree[node]! > 1 || held.has(node)));
      if (kept.length === left.length) return left;
      left = kept;
    }
  }

  /** Break contacts of relays and contactors that are on a way to some coil. */
  breaksOf(movers: readonly number[]): readonly PlanSwitch[] {
    return this.switches.filter(({ form, mechanism }) => form === 'break' && movers.includes(mechanism));
  }

  /** What hangs together without these nodes and, where one is given, without the break contacts of a mechanism. */
  private joined(without: ReadonlySet<number>, open = -1): Joining {
    const { nodes, joins } = this.plan;
    const net = new Joining(nodes);
    const join = (a: number, b: number): void => {
      if ([a, b].every((node) => !without.has(node) && !this.returns.has(node))) net.join(a, b);
    };
    for (const [a, b] of joins) join(a, b);
    for (const { a, b, mechanism, form } of this.switches)
      if (mechanism !== open || form !== 'break') join(a, b);
    return net;
  }

  /** The fed ends of a mechanism's coil. */
  private endsOf(mechanism: number): number[] {
    return this.plan.loads.flatMap(({ a, b, mechanism: moves }) =>
      moves === mechanism ? [a, b].filter((node) => !this.returns.has(node)) : [],
    );
  }

  /**
   * Those of the break contacts that are on some way to this mechanism's coil. A contact is when no single conductor parts it both
   * from the supply and from the coil: with a way back from there they are in one block (J. Hopcroft and R. Tarjan, 1973).
   */
  onWayTo(mechanism: number, breaks: readonly PlanSwitch[]): readonly PlanSwitch[] {
    const ends = this.endsOf(mechanism);
    const touched = this.switches.flatMap(({ a, b }) => [a, b]);
    const others = [...new Set(touched)].filter((node) => !this.live.has(node));
    let on = breaks;
    for (const without of [this.live, ...others.map((node) => new Set([node]))]) {
      if (on.length === 0) break;
      const net = this.joined(without);
      const [first, ...rest] = [...ends, ...this.live].filter((node) => !without.has(node));
      if (first === undefined) return [];
      for (const node of rest) net.join(first, node);
      const home = net.find(first);
      on = on.filter(({ a, b }) => [a, b].some((node) => !without.has(node) && net.find(node) === home));
    }
    return on;
  }

  /** Whether without the break contacts of the one the coil of the other can't be fed at all. */
  locksOut(one: number, other: number): boolean {
    const net = this.joined(new Set(), one);
    const fed = new Set([...this.live].map((node) => net.find(node)));
    return !this.endsOf(other).some((end) => fed.has(net.find(end)));
  }
}

/** Contactors that carry a motor's current. */
const hasMains = ({ switches }: Plan, mechanism: number): boolean =>
  switches.some(({ mechanism: moves, main }) => moves === mechanism && main);

/**
 * Pairs meant to lock each other out: each has a break contact on a way to the other's coil, or they are two contactors of which
 * one locks the other out.
 */
function pairsIn(machine: Machine): (readonly [number, number])[] {
  const { plan } = machine;
  const movers = moversOf(machine);
  const ways = new Ways(plan);
  const breaks = ways.breaksOf(movers);
  const locking = [...new Set(breaks.map(({ mechanism }) => mechanism))];
  const lockedBy = new Map<number, ReadonlySet<number>>();
  const locks = (one: number, other: number): boolean => {
    let by = lockedBy.get(other);
    if (!by) {
      by = new Set(ways.onWayTo(other, breaks).map(({ mechanism }) => mechanism));
      lockedBy.set(other, by);
    }
    return by.has(one);
  };
  return movers.flatMap((one, index) =>
    movers.slice(index + 1).flatMap((other) => {
      const powers = hasMains(plan, one) && hasMains(plan, other);
      const both = locking.includes(one) && locking.includes(other);
      if (both && locks(one, other) && locks(other, one)) return [[one, other] as const];
      if (!powers) return [];
      return ways.locksOut(one, other) || ways.locksOut(other, one) ? [[one, other] as const] : [];
    }),
  );
}

/** What has to be done so that the other one operates while this one is stuck operated; undefined when nothing does it. */
function actsToBoth(
  { machine }: Plant,
  acts: readonly Act[],
  stuck: number,
  other: number,
): readonly Act[] | undefined {
  const mechanisms = machine.plan.mechanisms.map((mechanism, index) =>
    index === stuck ? { ...mechanism, frozenAt: 1 } : mechanism,
  );
  const variant = variantOf(machine, { ...machine.plan, mechanisms });
  const start = begin(variant, 'live');
  if (start.at[other] === OPERATED) return [];
  let found: readonly Act[] | undefined;
  const moves = acts.map((act) => [act]);
  walkPlant({ machine: variant, start }, moves, ({ after, done }) => {
    if (after.at[other] === OPERATED) found = done;
    return found !== undefined;
  });
  return found;
}

/**
 * Of two that lock each other out neither operates while the other is operated, whatever is held, and be it that the other is held by
 * hand, welded or slow to release.
 */
export const lockedBothWays: DrawingRule = {
  name: 'locked-both-ways',
  check(circuit) {
    const plant = plantOf(circuit);
    const { machine } = plant;
    const { mechanisms } = machine.plan;
    const pairs = pairsIn(machine);
    const acts = pairs.length === 0 ? [] : actsToTry(circuit, machine);
    return pairs.flatMap(([one, other]) =>
      [[one, other] as const, [other, one] as const].flatMap(([stuck, free]) => {
        const done = actsToBoth(plant, acts, stuck, free);
        if (!done) return [];
        const both = { stuck: mechanisms[stuck]!.id, free: mechanisms[free]!.id };
        return [
          {
            said:
              done.length === 0
                ? ({ says: 'locked-both-ways.atOnce', ...both } as const)
                : ({
                    says: 'locked-both-ways',
                    ...both,
                    acts: done.map((act) => actSaid(act, circuit)),
                  } as const),
            concern: whereFed(circuit, both.free),
          },
        ];
      }),
    );
  },
};
