import { traitsOf } from '../circuit/index.ts';
import type { Plan } from '../solver/index.ts';
import { feedsOf, type Group } from './feeds.ts';
import { fixedAs, namesOf, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

/** Contacts that can be passed over: not those of the power circuit, and not what feeds everything behind it. */
const isOnTheWay = (plan: Plan, index: number): boolean => {
  const { mechanism, main } = plan.switches[index]!;
  return mechanism >= 0 && !main && plan.mechanisms[mechanism]!.drive !== 'feed';
};

/**
 * Of the contacts in series before a load those that are looked at: ways beside one another, and what a hand moves; where there is
 * neither, the first from the supply.
 */
function lookedAt(groups: readonly Group[], isByHand: (contact: number) => boolean): readonly Group[] {
  const decide = groups.filter(({ switches, series }) => !series || isByHand(switches[0]!));
  return decide.length > 0 ? decide : groups.slice(0, 1);
}

export const blockingContactOverlooked: Misconception = {
  id: 'blocking-contact-overlooked',
  changePlan: (plan, circuit) => {
    const hand = namesOf(circuit, (device) => traitsOf(device).movedBy === 'hand');
    const isByHand = (contact: number): boolean => hand.has(plan.switches[contact]!.device);
    const feeds = feedsOf(plan);
    const looked = new Set<number>();
    const passedOver = new Set<number>();
    plan.loads.forEach(({ role }, load) => {
      if (role === 'dirt') return;
      const groups = feeds
        .groupsOf(load)
        .filter(({ switches, series }) => !series || isOnTheWay(plan, switches[0]!));
      const decide = lookedAt(groups, isByHand);
      for (const group of groups)
        for (const contact of group.switches) (decide.includes(group) ? looked : passedOver).add(contact);
    });
    // A contact before several loads is passed over for all of them or for none.
    return withSwitches(plan, (contact, index) =>
      passedOver.has(index) && !looked.has(index) ? fixedAs(contact, 'closed') : contact,
    );
  },
};
