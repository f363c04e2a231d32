import { fixedAs, isRelayContact, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const breakNeverOpens: Misconception = {
  id: 'break-never-opens',
  idea: 'You took "normally closed" to mean always closed: the break contacts stayed closed when their relay operated.',
  advice:
    '"Normally" means at rest. A break contact is closed while its coil is de-energised and opens when the relay operates.',
  source: 'shown by published training texts and forums',
  changePlan: (plan) =>
    withSwitches(plan, (contact) =>
      contact.form === 'break' && isRelayContact(plan, contact) ? fixedAs(contact, 'closed') : contact,
    ),
};
