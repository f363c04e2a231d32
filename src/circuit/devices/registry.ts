/** Every kind of device, a line each. Kinds with which the same is done stand together, in the order in which they are told. */
import type { Device, DeviceKind } from '../../../shared/circuit.ts';
import { emergencyStop, pushButton } from './buttons.ts';
import { contactor } from './contactor.ts';
import { inputs, outputs } from './controller.ts';
import { breaker, fuse, isolator } from './feeding.ts';
import { fieldContact } from './field-contacts.ts';
import { lamp, sounder, valve } from './loads.ts';
import { motor } from './motor.ts';
import { overload } from './overload.ts';
import { latchingRelay, relay } from './relays.ts';
import { selector } from './selector.ts';
import { terminals } from './terminals.ts';
import { flasher, offDelay, onDelay, suppliedOffDelay } from './timers.ts';
import type { DeviceTraits } from './traits.ts';

export const DEVICES: { readonly [K in DeviceKind]: DeviceTraits<K> } = {
  'push-button': pushButton,
  'emergency-stop': emergencyStop,
  selector,
  'field-contact': fieldContact,
  'limit-switch': fieldContact,
  'float-switch': fieldContact,
  isolator,
  breaker,
  fuse,
  overload,
  outputs,
  relay,
  contactor,
  'on-delay': onDelay,
  'off-delay': offDelay,
  'supplied-off-delay': suppliedOffDelay,
  flasher,
  'latching-relay': latchingRelay,
  lamp,
  sounder,
  valve,
  motor,
  inputs,
  terminals,
};

/** The traits of a device; used with devices of the same kind. */
export const traitsOf = (device: Device): DeviceTraits<DeviceKind> => DEVICES[device.kind] as never;
