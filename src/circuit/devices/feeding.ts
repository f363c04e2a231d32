/** What supplies are fed through: drawn, and in service, open or closed. */
import { mainPoles } from '../anatomy/contacts.ts';
import { switchingDevice } from '../anatomy/switching.ts';
import type { DeviceTraits } from './traits.ts';

const verbs = ['open', 'close'] as const;

/** Drawn open, closed in service. */
const closedInService = { positions: ['open', 'closed'], live: 1 } as const;

/** A fuse is drawn whole; position 1 is blown or taken out. */
export const fuse: DeviceTraits<'fuse'> = {
  anatomy: (device) =>
    switchingDevice({
      name: device.name,
      drive: 'feed',
      positions: ['in', 'blown'],
      mains: mainPoles(device.poles, 'break'),
      protects: true,
      amps: device.amps,
    }),
  verbs,
  stands: ['whole', 'blown'],
};

export const breaker: DeviceTraits<'breaker'> = {
  anatomy: (device) =>
    switchingDevice({
      name: device.name,
      drive: 'feed',
      ...closedInService,
      mains: mainPoles(device.poles),
      protects: true,
      amps: device.amps,
    }),
  verbs,
  stands: ['open', 'closed'],
};

export const isolator: DeviceTraits<'isolator'> = {
  anatomy: (device) =>
    switchingDevice({
      name: device.name,
      drive: 'feed',
      ...closedInService,
      mains: mainPoles(device.poles),
    }),
  verbs,
  stands: ['open', 'closed'],
};
