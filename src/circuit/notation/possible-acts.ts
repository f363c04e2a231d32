/** Which acts can be done to which devices. */
import type { Device, DeviceKind } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';

export type Verb = Act['kind'];

const buttons: readonly DeviceKind[] = ['push-button', 'emergency-stop'];
const fieldDevices: readonly DeviceKind[] = ['field-contact', 'limit-switch', 'float-switch'];
const feeds: readonly DeviceKind[] = ['isolator', 'breaker', 'fuse'];
const coils: readonly DeviceKind[] = [
  'relay',
  'contactor',
  'on-delay',
  'off-delay',
  'flasher',
  'latching-relay',
];

/** Kinds of device for each act that is done to a device. */
const KINDS_FOR = {
  press: buttons,
  release: buttons,
  turn: ['selector'],
  make: fieldDevices,
  break: fieldDevices,
  open: feeds,
  close: feeds,
  trip: ['overload'],
  reset: ['overload'],
  on: ['outputs'],
  off: ['outputs'],
  hold: coils,
  free: coils,
} as const satisfies Partial<Record<Verb, readonly DeviceKind[]>>;

export type DeviceVerb = keyof typeof KINDS_FOR;
export const VERBS: readonly Verb[] = [
  ...(Object.keys(KINDS_FOR) as DeviceVerb[]),
  'fail',
  'restore',
  'wait',
];

export const kindsFor = (verb: DeviceVerb): readonly DeviceKind[] => KINDS_FOR[verb];

/** What can be done to a device, as it is written: `press -S1`, `turn -S3 Hand`. */
export function possibleActs(device: Device): string[] {
  const verbs = (Object.keys(KINDS_FOR) as DeviceVerb[]).filter((verb) =>
    kindsFor(verb).includes(device.kind),
  );
  return verbs.map((verb) => {
    if (device.kind === 'selector') return `${verb} ${device.name} ${device.positions.at(-1)}`;
    return `${verb} ${device.name}${device.kind === 'outputs' ? ':Q1' : ''}`;
  });
}
