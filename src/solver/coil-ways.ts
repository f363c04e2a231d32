/** By which ways coils can be fed, told from the drawing alone: what stands on them, and what keeps a coil off all of them. */
import { Joining } from '../graph/index.ts';
import type { Plan, PlanSwitch } from './plan.ts';

/** The circuit with every contact able to close, its returns left out: what a coil can be fed by. */
export class CoilWays {
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

  /** Contacts of these mechanisms that are on a way to some coil. */
  contactsOf(mechanisms: readonly number[]): readonly PlanSwitch[] {
    return this.switches.filter(({ mechanism }) => mechanisms.includes(mechanism));
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
   * Those of the contacts that are on some way to this mechanism's coil. A contact is when no single conductor parts it both
   * from the supply and from the coil: with a way back from there they are in one block (J. Hopcroft and R. Tarjan, 1973).
   */
  onWayTo(mechanism: number, contacts: readonly PlanSwitch[]): readonly PlanSwitch[] {
    const ends = this.endsOf(mechanism);
    const touched = this.switches.flatMap(({ a, b }) => [a, b]);
    const others = [...new Set(touched)].filter((node) => !this.live.has(node));
    let on = contacts;
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
