import type { DeviceOf } from '../../../shared/circuit.ts';
import type { Anatomy, LoadRole } from '../anatomy/types.ts';
import { TYPICAL_WATTS } from '../standards.ts';
import type { DeviceTraits } from './traits.ts';

interface LoadDevice {
  readonly role: LoadRole;
  readonly terminals: readonly [from: string, to: string];
  /** Where the device states none. */
  readonly watts: number;
}

const oneLoad = (
  { rating: { volts, current }, watts: stated }: DeviceOf<'lamp' | 'sounder' | 'valve'>,
  { role, terminals: [from, to], watts: typical }: LoadDevice,
): Anatomy => ({
  terminals: [from, to],
  mechanisms: [],
  contacts: [],
  loads: [{ from, to, role, ohms: (volts * volts) / (stated ?? typical), volts, current }],
});

/** IEC 60445 marks: lamps and sounders X1-X2; valves, being coils, A1-A2 (common practice, no source). */
const SIGNAL = ['X1', 'X2'] as const;
const COIL = ['A1', 'A2'] as const;

export const lamp: DeviceTraits<'lamp'> = {
  anatomy: (device) => ({
    ...oneLoad(device, { role: 'lamp', terminals: SIGNAL, watts: TYPICAL_WATTS.lamp }),
    ...(device.colour ? { colour: device.colour } : {}),
  }),
  verbs: [],
};

export const sounder: DeviceTraits<'sounder'> = {
  anatomy: (device) => oneLoad(device, { role: 'sounder', terminals: SIGNAL, watts: TYPICAL_WATTS.sounder }),
  verbs: [],
};

export const valve: DeviceTraits<'valve'> = {
  anatomy: (device) => oneLoad(device, { role: 'valve', terminals: COIL, watts: TYPICAL_WATTS.valve }),
  verbs: [],
};
