/** Which relays and contactors can't be operated together, as the circuit is wired. */
import { Joining } from '../../src/graph/index.ts';
import type { Plan } from '../../src/solver/index.ts';

/** What a supply's poles reach with every contact closed but the break contacts of one mechanism. */
function reached(plan: Plan, open = -1): (node: number) => boolean {
  const returns = new Set(plan.supplies.map(({ poles }) => poles.at(-1)!.node));
  const live = plan.supplies.flatMap(({ poles }) => poles.slice(0, -1).map(({ node }) => node));
  const net = new Joining(plan.nodes);
  const join = (a: number, b: number): void => {
    if (!returns.has(a) && !returns.has(b)) net.join(a, b);
  };
  for (const node of live) join(live[0]!, node);
  for (const [a, b] of plan.joins) join(a, b);
  for (const { a, b, mechanism, form } of plan.switches)
    if (mechanism !== open || form !== 'break') join(a, b);
  return (node) => live.length > 0 && net.find(node) === net.find(live[0]!);
}

/** Pairs by designation: each keeps the other's coil off every way, whatever else is closed. */
export function lockedApart(plan: Plan): (readonly [string, string])[] {
  const coils = plan.loads.flatMap(({ a, b, mechanism }) => {
    const moves = plan.mechanisms[mechanism];
    return moves?.drive === 'coil' ? [{ mechanism, id: moves.id, ends: [a, b] }] : [];
  });
  const fed = (open?: number): ReadonlySet<number> => {
    const live = reached(plan, open);
    return new Set(coils.flatMap(({ mechanism, ends }) => (ends.some(live) ? [mechanism] : [])));
  };
  const ever = fed();
  const breaking = new Set(
    plan.switches.flatMap(({ mechanism, form }) => (form === 'break' ? [mechanism] : [])),
  );
  const able = coils.filter(({ mechanism }) => breaking.has(mechanism) && ever.has(mechanism));
  const without = new Map(able.map(({ mechanism }) => [mechanism, fed(mechanism)]));
  const keepsOff = (one: number, other: number): boolean => !without.get(one)!.has(other);
  return able.flatMap((one, index) =>
    able
      .slice(index + 1)
      .filter(({ mechanism }) => keepsOff(one.mechanism, mechanism) && keepsOff(mechanism, one.mechanism))
      .map(({ id }) => [one.id, id] as const),
  );
}
