import type { Device } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { traitsOf } from './devices/registry.ts';

/**
 * What can be done to one device, by a person, the process or a program: in pairs that undo one another, the one that
 * leaves the drawn state (or, for what feeds, the live one) first; of a selector one act for each position. Empty for what
 * nothing can be done to.
 */
export function actsOn(device: Device): readonly Act[] {
  const { verbs, acts } = traitsOf(device);
  return acts?.(device) ?? verbs.map((kind) => ({ kind, device: device.name }) as Act);
}
