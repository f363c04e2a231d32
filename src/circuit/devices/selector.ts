import { switchingDevice } from '../anatomy/switching.ts';
import type { DeviceTraits } from './traits.ts';

export const selector: DeviceTraits<'selector'> = {
  anatomy: (device) =>
    switchingDevice({ name: device.name, positions: device.positions, contacts: device.contacts }),
  verbs: ['turn'],
  acts: (device) => device.positions.map((to) => ({ kind: 'turn', device: device.name, to })),
  movedBy: 'hand',
  stands: ['standsAt', 'standsAt'],
};
