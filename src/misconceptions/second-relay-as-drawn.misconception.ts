import type { Plan } from '../solver/index.ts';
import { feedsOf } from './feeds.ts';
import { byCoil, coilsByMechanism, withMechanisms } from './plan-tools.ts';
import type { Misconception } from './types.ts';

/** For each relay those whose contacts feed one of its coils, itself too where it holds itself. */
function directlyAbove(plan: Plan): ReadonlyMap<number, readonly number[]> {
  const feeds = feedsOf(plan);
  const above = new Map<number, number[]>();
  for (const [mechanism, coils] of coilsByMechanism(plan)) {
    const found = coils.flatMap((coil) => [...feeds.mechanismsOf(coil)]);
    above.set(
      mechanism,
      found.filter((other) => byCoil(plan.mechanisms[other]!)),
    );
  }
  return above;
}

function allAbove(above: ReadonlyMap<number, readonly number[]>, mechanism: number): ReadonlySet<number> {
  const found = new Set<number>();
  const queue = [mechanism];
  for (const here of queue) {
    for (const other of above.get(here)!) {
      if (found.has(other)) continue;
      found.add(other);
      queue.push(other);
    }
  }
  return found;
}

/** Relays that follow others and don't act back on them; two interlocked relays follow neither. */
function followers(plan: Plan): ReadonlySet<number> {
  const above = directlyAbove(plan);
  const closures = new Map([...above.keys()].map((mechanism) => [mechanism, allAbove(above, mechanism)]));
  return new Set(
    [...closures].flatMap(([mechanism, others]) =>
      [...others].some((other) => !closures.get(other)!.has(mechanism)) ? [mechanism] : [],
    ),
  );
}

export const secondRelayAsDrawn: Misconception = {
  id: 'second-relay-as-drawn',
  changePlan: (plan) => {
    const left = followers(plan);
    return withMechanisms(plan, (mechanism, index) =>
      left.has(index) && mechanism.frozenAt === undefined ? { ...mechanism, frozenAt: 0 } : mechanism,
    );
  },
};
