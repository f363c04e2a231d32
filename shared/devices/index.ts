/** Every kind of device as data, a line each, in the order in which they are listed. */
import { z } from 'zod';
import { emergencyStop, pushButton } from './buttons.ts';
import { contactor } from './contactor.ts';
import { inputs, outputs } from './controller.ts';
import { breaker, fuse, isolator } from './feeding.ts';
import { fieldContact, floatSwitch, limitSwitch } from './field-contacts.ts';
import { lamp, sounder, valve } from './loads.ts';
import { motor } from './motor.ts';
import { overload } from './overload.ts';
import { latchingRelay, relay } from './relays.ts';
import { selector } from './selector.ts';
import { terminals } from './terminals.ts';
import { flasher, offDelay, onDelay, suppliedOffDelay } from './timers.ts';

export const device = z.discriminatedUnion('kind', [
  relay,
  contactor,
  onDelay,
  offDelay,
  suppliedOffDelay,
  flasher,
  latchingRelay,
  pushButton,
  emergencyStop,
  selector,
  fieldContact,
  limitSwitch,
  floatSwitch,
  overload,
  fuse,
  breaker,
  isolator,
  lamp,
  sounder,
  valve,
  motor,
  inputs,
  outputs,
  terminals,
]);

export type Device = Readonly<z.infer<typeof device>>;
export type DeviceKind = Device['kind'];
export type DeviceOf<K extends DeviceKind> = Extract<Device, { kind: K }>;
