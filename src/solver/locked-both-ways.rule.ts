/** A rule of practice that has to be solved: two that lock each other out are never operated together, even if one sticks. */

import type { Act } from '../../shared/scenario.ts';
import { actSaid, type DrawingRule } from '../circuit/index.ts';
import { actsToTry } from './acts-to-try.ts';
import { meantApart } from './meant-apart.ts';
import { type Plant, plantOf } from './plant.ts';
import { OPERATED, walkPlant } from './plant-walk.ts';
import { begin } from './play.ts';
import { variantOf } from './variant.ts';
import { whereFed } from './where-fed.ts';

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
    const pairs = meantApart(circuit, machine);
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
