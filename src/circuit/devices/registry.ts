/** Every kind of device, a line each. Kinds with which the same is done stand together, in the order in which they are told. */
import type { Device, DeviceKind, DeviceOf } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import { contactorAnatomy, latchingAnatomy, relayAnatomy, timerAnatomy } from '../anatomy/coil-devices.ts';
import { inputsAnatomy, outputsAnatomy, terminalsAnatomy } from '../anatomy/controller.ts';
import { lampAnatomy, motorAnatomy } from '../anatomy/loads.ts';
import {
  breakerAnatomy,
  buttonAnatomy,
  fieldAnatomy,
  fuseAnatomy,
  isolatorAnatomy,
  overloadAnatomy,
  selectorAnatomy,
} from '../anatomy/switches.ts';
import type { DeviceTraits } from './traits.ts';

type Field = 'field-contact' | 'limit-switch' | 'float-switch';

const button = { anatomy: buttonAnatomy, verbs: ['press', 'release'] } as const;

const field = {
  anatomy: fieldAnatomy,
  verbs: ['make', 'break'],
  acts({ name, contacts }: DeviceOf<Field>): readonly Act[] {
    const made = { kind: 'make', device: name } as const;
    const broken = { kind: 'break', device: name } as const;
    return contacts[0]?.form === 'break' ? [broken, made] : [made, broken];
  },
} as const;

const selector: DeviceTraits<'selector'> = {
  anatomy: selectorAnatomy,
  verbs: ['turn'],
  acts: ({ name, positions }) => positions.map((to) => ({ kind: 'turn', device: name, to })),
};

const feeds = ['open', 'close'] as const;

const outputs: DeviceTraits<'outputs'> = {
  anatomy: outputsAnatomy,
  verbs: ['on', 'off'],
  acts: (device) =>
    outputsAnatomy(device)
      .terminals.filter((point) => point.startsWith('Q'))
      .flatMap((point) => [
        { kind: 'on' as const, device: device.name, point },
        { kind: 'off' as const, device: device.name, point },
      ]),
};

const coil = ['hold', 'free'] as const;

/** Nothing can be done to it. */
const none: readonly [] = [];

export const DEVICES: { readonly [K in DeviceKind]: DeviceTraits<K> } = {
  'push-button': button,
  'emergency-stop': button,
  selector,
  'field-contact': field,
  'limit-switch': field,
  'float-switch': field,
  isolator: { anatomy: isolatorAnatomy, verbs: feeds },
  breaker: { anatomy: breakerAnatomy, verbs: feeds },
  fuse: { anatomy: fuseAnatomy, verbs: feeds },
  overload: { anatomy: overloadAnatomy, verbs: ['trip', 'reset'] },
  outputs,
  relay: { anatomy: relayAnatomy, verbs: coil },
  contactor: { anatomy: contactorAnatomy, verbs: coil },
  'on-delay': { anatomy: timerAnatomy, verbs: coil },
  'off-delay': { anatomy: timerAnatomy, verbs: coil },
  flasher: { anatomy: timerAnatomy, verbs: coil },
  'latching-relay': { anatomy: latchingAnatomy, verbs: coil },
  lamp: { anatomy: lampAnatomy, verbs: none },
  sounder: { anatomy: lampAnatomy, verbs: none },
  valve: { anatomy: lampAnatomy, verbs: none },
  motor: { anatomy: motorAnatomy, verbs: none },
  inputs: { anatomy: inputsAnatomy, verbs: none },
  terminals: { anatomy: terminalsAnatomy, verbs: none },
};

/** The traits of a device; used with devices of the same kind. */
export const traitsOf = (device: Device): DeviceTraits<DeviceKind> => DEVICES[device.kind] as never;
