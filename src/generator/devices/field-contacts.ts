import type { Act } from '../../../shared/scenario.ts';
import type { ActuatedPart } from '../parts.ts';
import type { Sensor } from '../vocabulary/index.ts';
import { actuated } from './actuated.ts';
import type { DeviceShelf } from './shelf.ts';

const KINDS = { contact: 'field-contact', limit: 'limit-switch', float: 'float-switch' } as const;

/** A contact in the field; `make` and `break` of the scenario go by its first contact. */
export function addSensor(shelf: DeviceShelf, sensor: Sensor, text: string): ActuatedPart {
  const name = shelf.name('B');
  return actuated(
    shelf,
    name,
    (contacts) => ({ kind: KINDS[sensor], name, text, contacts }),
    (first) => {
      const make: Act = { kind: 'make', device: name };
      const brk: Act = { kind: 'break', device: name };
      return first === 'break'
        ? { on: brk, off: make, springs: false }
        : { on: make, off: brk, springs: false };
    },
  );
}
