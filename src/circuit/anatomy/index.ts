/** What each device is made of. The only place that knows device kinds one by one; all else reads properties. */
import type { Device, Supply } from '../../../shared/circuit.ts';
import { contactorAnatomy, latchingAnatomy, relayAnatomy, timerAnatomy } from './coil-devices.ts';
import { inputsAnatomy, outputsAnatomy, terminalsAnatomy } from './controller.ts';
import { lampAnatomy, motorAnatomy } from './loads.ts';
import {
  breakerAnatomy,
  buttonAnatomy,
  fieldAnatomy,
  fuseAnatomy,
  isolatorAnatomy,
  overloadAnatomy,
  selectorAnatomy,
} from './switches.ts';
import type { Anatomy } from './types.ts';

export type { Anatomy, Contact, Drive, Load, LoadRole, Mechanism } from './types.ts';

const known = new WeakMap<Device, Anatomy>();

/** The anatomy of a device; worked out once for each device record, which never changes. */
export function anatomyOf(device: Device): Anatomy {
  const before = known.get(device);
  if (before) return before;
  const made = makeAnatomy(device);
  known.set(device, made);
  return made;
}

function makeAnatomy(device: Device): Anatomy {
  switch (device.kind) {
    case 'relay':
      return relayAnatomy(device);
    case 'contactor':
      return contactorAnatomy(device);
    case 'on-delay':
    case 'off-delay':
    case 'flasher':
      return timerAnatomy(device);
    case 'latching-relay':
      return latchingAnatomy(device);
    case 'push-button':
    case 'emergency-stop':
      return buttonAnatomy(device);
    case 'selector':
      return selectorAnatomy(device);
    case 'field-contact':
    case 'limit-switch':
    case 'float-switch':
      return fieldAnatomy(device);
    case 'overload':
      return overloadAnatomy(device);
    case 'fuse':
      return fuseAnatomy(device);
    case 'breaker':
      return breakerAnatomy(device);
    case 'isolator':
      return isolatorAnatomy(device);
    case 'lamp':
    case 'sounder':
    case 'valve':
      return lampAnatomy(device);
    case 'motor':
      return motorAnatomy(device);
    case 'inputs':
      return inputsAnatomy(device);
    case 'outputs':
      return outputsAnatomy(device);
    case 'terminals':
      return terminalsAnatomy(device);
  }
}

/** The terminals of a supply: AC `L N`, DC `L+ L-`, three-phase `L1 L2 L3 N`. The return comes last. */
export function supplyTerminals(supply: Supply): readonly string[] {
  switch (supply.current) {
    case 'AC':
      return ['L', 'N'];
    case 'DC':
      return ['L+', 'L-'];
    case '3AC':
      return ['L1', 'L2', 'L3', 'N'];
  }
}
