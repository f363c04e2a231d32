import { coilDevice } from '../anatomy/coil-device.ts';
import { mainPoles } from '../anatomy/contacts.ts';
import { contactorLimits, SPEEDS, TYPICAL_WATTS } from '../standards.ts';
import { COIL_STANDS, COIL_VERBS } from './coil-acts.ts';
import type { DeviceTraits } from './traits.ts';

export const contactor: DeviceTraits<'contactor'> = {
  anatomy: (device) =>
    coilDevice({
      name: device.name,
      drive: 'coil',
      speeds: SPEEDS.contactor,
      coil: {
        rating: device.rating,
        watts: TYPICAL_WATTS.contactor,
        limits: contactorLimits(device.rating.current),
      },
      mains: mainPoles(device.mains),
      auxiliaries: device.contacts,
      linked: true,
    }),
  verbs: COIL_VERBS,
  stands: COIL_STANDS,
};
