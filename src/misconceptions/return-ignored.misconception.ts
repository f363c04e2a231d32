import type { Plan } from '../solver/index.ts';
import { withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

/** Nodes that contacts, closed or open, lead to from some nodes. */
function reachedFrom(plan: Plan, starts: readonly number[]): ReadonlySet<number> {
  const next = new Map<number, number[]>();
  const link = (a: number, b: number): void => {
    const list = next.get(a);
    if (list) list.push(b);
    else next.set(a, [b]);
  };
  const links = [...plan.switches.map(({ a, b }) => [a, b] as const), ...plan.joins];
  for (const [a, b] of links) {
    link(a, b);
    link(b, a);
  }
  const seen = new Set(starts);
  const queue = [...seen];
  for (const node of queue) {
    for (const other of next.get(node) ?? []) {
      if (seen.has(other)) continue;
      seen.add(other);
      queue.push(other);
    }
  }
  return seen;
}

export const returnIgnored: Misconception = {
  id: 'return-ignored',
  changePlan: (plan) => {
    const returns = plan.supplies.map(({ poles }) => poles.at(-1)!.node);
    const behind = reachedFrom(plan, returns);
    const line = reachedFrom(
      plan,
      plan.supplies.flatMap(({ poles }) => poles.slice(0, -1).map(({ node }) => node)),
    );
    return withSwitches(plan, (contact) => {
      const onReturn = behind.has(contact.a) && !line.has(contact.a);
      return onReturn && contact.fixed !== 'closed' ? { ...contact, fixed: 'closed' } : contact;
    });
  },
};
