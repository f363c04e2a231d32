import type { DeviceOf } from '../../../shared/circuit.ts';
import { coilDevice, relayCoil } from '../anatomy/coil-device.ts';
import { changeoverPoles } from '../anatomy/contacts.ts';
import type { Anatomy, Drive } from '../anatomy/types.ts';
import { SPEEDS, TYPICAL_WATTS } from '../standards.ts';
import { COIL_STANDS, COIL_VERBS } from './coil-acts.ts';
import type { DeviceTraits } from './traits.ts';

const timer = (
  device: DeviceOf<'on-delay' | 'off-delay' | 'supplied-off-delay' | 'flasher'>,
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

/** Timing relays have one changeover or two. */
const withCoil = { verbs: COIL_VERBS, stands: COIL_STANDS, mostPoles: 2 } as const;

export const onDelay: DeviceTraits<'on-delay'> = {
  ...withCoil,
  anatomy: (device) => timer(device, 'on-delay', [device.seconds]),
};

export const offDelay: DeviceTraits<'off-delay'> = {
  ...withCoil,
  anatomy: (device) => timer(device, 'off-delay', [device.seconds]),
};

export const suppliedOffDelay: DeviceTraits<'supplied-off-delay'> = {
  ...withCoil,
  anatomy: (device) => timer(device, 'supplied-off-delay', [device.seconds]),
};

export const flasher: DeviceTraits<'flasher'> = {
  ...withCoil,
  anatomy: (device) => timer(device, 'flasher', [device.on, device.off]),
};
