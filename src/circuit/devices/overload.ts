import { mainPoles } from '../anatomy/contacts.ts';
import { switchingDevice } from '../anatomy/switching.ts';
import type { DeviceTraits } from './traits.ts';

export const overload: DeviceTraits<'overload'> = {
  anatomy({ name }) {
    const relay = switchingDevice({
      name,
      positions: ['reset', 'tripped'],
      mains: mainPoles(3),
      contacts: [
        { form: 'break', terminals: ['95', '96'] },
        { form: 'make', terminals: ['97', '98'] },
      ],
    });
    // A thermal overload's own main poles never open: its 95-96 stops the contactor (common practice, no source).
    return {
      ...relay,
      contacts: relay.contacts.map((contact) => (contact.main ? { ...contact, closedIn: [0, 1] } : contact)),
    };
  },
  verbs: ['trip', 'reset'],
  stands: ['notTripped', 'tripped'],
};
