/** Which acts can be done to which devices. */
import type { Device, DeviceKind } from '../../../shared/circuit.ts';
import { actsOn } from '../acts-on.ts';
import { DEVICES, traitsOf } from '../devices/registry.ts';
import { type DeviceVerb, exampleOf, type Verb } from '../devices/traits.ts';
import { writeAct } from './write-acts.ts';

export type { DeviceVerb, Verb };

const KINDS = Object.keys(DEVICES) as DeviceKind[];

export const VERBS: readonly Verb[] = [
  ...new Set(KINDS.flatMap((kind) => DEVICES[kind].verbs)),
  'fail',
  'restore',
  'wait',
];

export const kindsFor = (verb: DeviceVerb): readonly DeviceKind[] =>
  KINDS.filter((kind) => DEVICES[kind].verbs.includes(verb));

/** What can be done to a device, as it is written: `press -S1`, `turn -S3 Hand`. */
export function possibleActs(device: Device): string[] {
  const acts = actsOn(device);
  return traitsOf(device).verbs.flatMap((verb) => {
    const example = exampleOf(acts.filter(({ kind }) => kind === verb));
    return example ? [writeAct(example)] : [];
  });
}
