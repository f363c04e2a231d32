import type { DeviceOf } from '../../../shared/circuit.ts';
import { coilDevice, relayCoil } from '../anatomy/coil-device.ts';
import { changeoverPoles } from '../anatomy/contacts.ts';
import { SPEEDS } from '../standards.ts';
import { COIL_STANDS, COIL_VERBS } from './coil-acts.ts';
import type { DeviceTraits } from './traits.ts';

const anatomy = (drive: 'coil' | 'latch') => (device: DeviceOf<'relay' | 'latching-relay'>) =>
  coilDevice({
    name: device.name,
    drive,
    speeds: SPEEDS.relay,
    coil: relayCoil(device.rating),
    auxiliaries: changeoverPoles(device.poles),
  });

/** Plug-in relays have up to four changeovers. */
const withCoil = { verbs: COIL_VERBS, stands: COIL_STANDS, mostPoles: 4 } as const;

export const relay: DeviceTraits<'relay'> = { ...withCoil, anatomy: anatomy('coil') };
export const latchingRelay: DeviceTraits<'latching-relay'> = { ...withCoil, anatomy: anatomy('latch') };
