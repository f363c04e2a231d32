import { isRelayContact, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const makeForBreak: Misconception = {
  id: 'make-for-break',
  idea: 'You read the make contacts as break contacts and the break contacts as make contacts.',
  advice:
    'Look at the second figure of the terminal numbers: 1-2 is a break contact, 3-4 a make; on a changeover 1 is the common, 2 the break leg, 4 the make leg.',
  source: 'common practice, no source',
  changePlan: (plan) =>
    withSwitches(plan, (contact) => {
      if (!isRelayContact(plan, contact) || contact.fixed) return contact;
      return { ...contact, closedIn: [0, 1].filter((position) => !contact.closedIn.includes(position)) };
    }),
};
