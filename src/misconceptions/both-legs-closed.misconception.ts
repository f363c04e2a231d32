import { fixedAs, isRelayContact, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const bothLegsClosed: Misconception = {
  id: 'both-legs-closed',
  idea: 'You let both legs of a changeover contact carry current at the same time.',
  advice:
    'A changeover joins its common to one leg at a time: to the break leg at rest, to the make leg when the relay has operated. On the way it joins neither.',
  source: 'common practice, no source',
  changePlan: (plan) =>
    withSwitches(plan, (contact) =>
      contact.changeover && isRelayContact(plan, contact) ? fixedAs(contact, 'closed') : contact,
    ),
};
