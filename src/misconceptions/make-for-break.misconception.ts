import { isRelayContact, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

export const makeForBreak: Misconception = {
  id: 'make-for-break',
  changePlan: (plan) =>
    withSwitches(plan, (contact) => {
      if (!isRelayContact(plan, contact) || contact.fixed) return contact;
      return { ...contact, closedIn: [0, 1].filter((position) => !contact.closedIn.includes(position)) };
    }),
};
