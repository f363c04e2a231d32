import type { DeviceOf } from '../../../shared/circuit.ts';
import { coilDevice, relayCoil } from '../anatomy/coil-device.ts';
import { changeoverPoles } from '../anatomy/contacts.ts';
import type { Anatomy, Drive } from '../anatomy/types.ts';
import { SPEEDS, TYPICAL_WATTS } from '../standards.ts';
import { COIL_STANDS, COIL_VERBS } from './coil-acts.ts';
import type { DeviceTraits } from './traits.ts';

const timer = (
  device: DeviceOf<'on-delay' | 'off-delay' | 'flasher'>,
  drive: Drive,
  delays: readonly number[],
): Anatomy =>
  coilDevice({
    name: device.name,
    drive,
    speeds: SPEEDS.timer,
    delays,
    coil: relayCoil(device.rating, TYPICAL_WATTS.timer),
    auxiliaries: changeoverPoles(device.poles, true),
  });

const delayed = {
  verbs: COIL_VERBS,
  stands: COIL_STANDS,
} as const;

export const onDelay: DeviceTraits<'on-delay'> = {
  ...delayed,
  anatomy: (device) => timer(device, 'on-delay', [device.seconds]),
};

export const offDelay: DeviceTraits<'off-delay'> = {
  ...delayed,
  anatomy: (device) => timer(device, 'off-delay', [device.seconds]),
};

export const flasher: DeviceTraits<'flasher'> = {
  anatomy: (device) => timer(device, 'flasher', [device.on, device.off]),
  verbs: COIL_VERBS,
  stands: COIL_STANDS,
};
