import { asDrawn, isRelayContact, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const firstPoleOnly: Misconception = {
  id: 'first-pole-only',
  idea: 'You moved only the first pole of a relay and left its other poles at rest.',
  advice: 'All poles of a relay move together with its coil: 11-12-14, 21-22-24 and so on.',
  source: 'common practice, no source',
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
