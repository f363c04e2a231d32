import { fixedAs, isRelayContact, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const breakNeverOpens: Misconception = {
  id: 'break-never-opens',
  changePlan: (plan) =>
    withSwitches(plan, (contact) =>
      contact.form === 'break' && isRelayContact(plan, contact) ? fixedAs(contact, 'closed') : contact,
    ),
};
