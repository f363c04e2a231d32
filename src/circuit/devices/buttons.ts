import type { DeviceOf } from '../../../shared/circuit.ts';
import { switchingDevice } from '../anatomy/switching.ts';
import type { DeviceTraits } from './traits.ts';

const button = {
  anatomy: (device: DeviceOf<'push-button' | 'emergency-stop'>) =>
    switchingDevice({ name: device.name, positions: ['rest', 'pressed'], contacts: device.contacts }),
  verbs: ['press', 'release'],
  movedBy: 'hand',
  stands: ['notPressed', 'pressed'],
} as const;

export const pushButton: DeviceTraits<'push-button'> = {
  ...button,
  momentary: true,
  // One that can do nothing but break.
  stops: ({ contacts }) => contacts.every(({ form }) => form === 'break'),
};

export const emergencyStop: DeviceTraits<'emergency-stop'> = {
  ...button,
  stops: () => true,
};
