import { asDrawn, isRelayContact, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const firstPoleOnly: Misconception = {
  id: 'first-pole-only',
  changePlan: (plan) => {
    const first = new Map<number, number>();
    for (const { mechanism, pole, main } of plan.switches) {
      if (!main) first.set(mechanism, Math.min(pole, first.get(mechanism) ?? Infinity));
    }
    return withSwitches(plan, (contact) =>
      isRelayContact(plan, contact) && !contact.main && contact.pole !== first.get(contact.mechanism)
        ? asDrawn(contact)
        : contact,
    );
  },
};
