import { feedsOf } from './feeds.ts';
import { coilsByMechanism, fixedAs, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const sealForgotten: Misconception = {
  id: 'seal-forgotten',
  changePlan: (plan) => {
    const feeds = feedsOf(plan);
    const seals = new Set<number>();
    for (const [mechanism, coils] of coilsByMechanism(plan)) {
      for (const index of coils.flatMap((coil) => feeds.ofLoad(coil))) {
        const contact = plan.switches[index]!;
        if (contact.mechanism === mechanism && contact.form === 'make') seals.add(index);
      }
    }
    return withSwitches(plan, (contact, index) => (seals.has(index) ? fixedAs(contact, 'open') : contact));
  },
};
