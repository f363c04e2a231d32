import { fixedAs, isRelayContact, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const bothLegsClosed: Misconception = {
  id: 'both-legs-closed',
  changePlan: (plan) =>
    withSwitches(plan, (contact) =>
      contact.changeover && isRelayContact(plan, contact) ? fixedAs(contact, 'closed') : contact,
    ),
};
