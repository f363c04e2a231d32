import { fixedAs, isRelayContact, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const openContactFollowed: Misconception = {
  id: 'open-contact-followed',
  idea: 'You followed the current through make contacts that are still open.',
  advice:
    'Before going through a make contact, find its coil: the contact is closed only when that relay has operated.',
  source: 'common practice, no source',
  changePlan: (plan) =>
    withSwitches(plan, (contact) =>
      contact.form === 'make' && isRelayContact(plan, contact) ? fixedAs(contact, 'closed') : contact,
    ),
};
