import { fixedAs, isRelayContact, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const openContactFollowed: Misconception = {
  id: 'open-contact-followed',
  changePlan: (plan) =>
    withSwitches(plan, (contact) =>
      contact.form === 'make' && isRelayContact(plan, contact) ? fixedAs(contact, 'closed') : contact,
    ),
};
